package coilwright.job;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Marks a quantity of a job file's section with its kind and its least value. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
@interface Measure {
    /** What it measures. */
    Quantity.Kind value();

    /** Its least value. */
    Least least() default Least.OVER_ZERO;

    /** Least values that sizes and readings have. */
    enum Least {
        /** Sizes of what is there. */
        OVER_ZERO,
        /** Sizes of what may be wanting. */
        ZERO,
        /** Readings of either sign. */
        NONE
    }
}
