package coilwright.job;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Marks a whole number of a job file's section with its range. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
@interface Count {
    /** Least value taken. */
    int from() default 1;

    /** Greatest value taken. */
    int to();
}
