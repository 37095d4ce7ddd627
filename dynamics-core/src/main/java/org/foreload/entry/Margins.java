package org.foreload.entry;

/**
 * What an entry left unused between the brake point and the minimum of speed, and over its whole length.
 *
 * @param front friction that the front axle still had at its fullest, as a share of all it had; until the apex
 * @param rear the same for the rear axle
 * @param edge distance, m, between the CG and the edge of the track where they came closest; negative beyond the edge
 */
public record Margins(double front, double rear, double edge) {}
