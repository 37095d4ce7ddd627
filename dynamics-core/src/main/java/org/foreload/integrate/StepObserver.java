package org.foreload.integrate;

/** Sees each step that was taken, once, in order. */
@FunctionalInterface
public interface StepObserver {

    /**
     * A step has been taken.
     *
     * @param step readable until the next one
     */
    void taken(Step step);
}
