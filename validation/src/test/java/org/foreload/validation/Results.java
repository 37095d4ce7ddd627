package org.foreload.validation;

import java.util.List;

/** The catalogue, run once for all tests. */
final class Results {

    static final List<CheckResult> ALL = Validation.run(Catalogue.read());

    private Results() {}
}
