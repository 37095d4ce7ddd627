package org.foreload.file;

/**
 * Something possible but unusual in a file.
 *
 * @param file the file as the user named it
 * @param field the field with its place in the file
 * @param value its value
 * @param message what is usual
 */
public record Warning(String file, String field, String value, String message) {

    /** The warning as one line. */
    public String line() {
        return "warning: " + new InputException(file, field, value, message).line();
    }
}
