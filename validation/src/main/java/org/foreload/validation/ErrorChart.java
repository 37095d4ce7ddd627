package org.foreload.validation;
/** x */
final class ErrorChart {}
