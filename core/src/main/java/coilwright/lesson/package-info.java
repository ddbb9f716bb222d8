/**
 * Exercises with worked answers, made from a seed, and a walk through the rules of winding. All answers are worked out
 * by the rooms below; an exercise has one right answer, or is not set. Nothing here is ever {@code null}.
 */
package coilwright.lesson;
