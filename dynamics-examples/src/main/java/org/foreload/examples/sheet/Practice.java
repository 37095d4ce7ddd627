package org.foreload.examples.sheet;

import java.util.Optional;
import org.foreload.risk.PracticeSteps;
import org.foreload.risk.Risk;

/**
 * How a driver gets to the plan.
 *
 * @param plan how often the plan itself fails for this driver
 * @param steps from straight-line braking towards the plan; empty where the driver cannot brake straight within the
 *     accepted risk, or straight-line braking does not make the corner
 */
record Practice(Risk plan, Optional<PracticeSteps> steps) {}
