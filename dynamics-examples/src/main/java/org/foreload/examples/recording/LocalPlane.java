package org.foreload.examples.recording;

/**
 * A level plane that touches the earth at a point: east and north in metres, from the radii of curvature of the WGS 84
 * ellipsoid there (NIMA TR8350.2, semi-major axis and flattening, from memory). Within 10 km of the point distances are
 * right to about a part in a thousand of the distance's own share of that, some centimetres a kilometre.
 *
 * @param latitude of the point, degrees
 * @param longitude of the point, degrees
 */
record LocalPlane(double latitude, double longitude) {

    private static final double SEMI_MAJOR = 6_378_137;
    private static final double FLATTENING = 1 / 298.257223563;

    /** Metres to the east. */
    double east(double lon) {
        double turned = lon - longitude;
        double around = turned - 360 * Math.rint(turned / 360);
        return eastPerRadian() * Math.toRadians(around);
    }

    /** Metres to the north. */
    double north(double lat) {
        return northPerRadian() * Math.toRadians(lat - latitude);
    }

    /** Degrees of longitude at so many metres to the east. */
    double longitudeAt(double east) {
        return longitude + Math.toDegrees(east / eastPerRadian());
    }

    /** Degrees of latitude at so many metres to the north. */
    double latitudeAt(double north) {
        return latitude + Math.toDegrees(north / northPerRadian());
    }

    private double eastPerRadian() {
        double sin = Math.sin(Math.toRadians(latitude));
        double radius = SEMI_MAJOR / Math.sqrt(1 - eccentricitySquared() * sin * sin);
        return radius * Math.cos(Math.toRadians(latitude));
    }

    private double northPerRadian() {
        double sin = Math.sin(Math.toRadians(latitude));
        double root = Math.sqrt(1 - eccentricitySquared() * sin * sin);
        return SEMI_MAJOR * (1 - eccentricitySquared()) / (root * root * root);
    }

    private static double eccentricitySquared() {
        return FLATTENING * (2 - FLATTENING);
    }
}
