package org.foreload.examples.command;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Names of files on the command line. */
final class FilePath implements ITypeConverter<Path> {

    @Override
    public Path convert(String text) {
        try {
            if (!text.isBlank()) {
                return Path.of(text);
            }
        } catch (InvalidPathException e) {
            throw new TypeConversionException("no name that a file can have");
        }
        throw new TypeConversionException("no name");
    }
}
