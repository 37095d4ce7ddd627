package org.foreload.examples.command;

/** A verb that drives entries: with some options for seconds, with others for minutes. */
interface Driving {

    /** Whether this run takes only seconds: then compiling well costs more than it makes quicker. */
    boolean brief();
}
