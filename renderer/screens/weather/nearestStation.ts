interface Place {
  latitudeDeg: number;
  longitudeDeg: number;
}

/** Beyond this a station does not stand for a field; the season refuses it too (common practice, no source). */
const furthestKm = 80;

/** The nearest of some stations, null where none is near enough. Over so short a way a flat map will do. */
export function nearestStation<Station extends Place>(
  place: Place,
  stations: readonly Station[],
): Station | null {
  const kmOf = (station: Station) =>
    Math.hypot(
      station.latitudeDeg - place.latitudeDeg,
      (station.longitudeDeg - place.longitudeDeg) * Math.cos((place.latitudeDeg * Math.PI) / 180),
    ) * 111.2;
  const [nearest] = stations.toSorted((a, b) => kmOf(a) - kmOf(b));
  return nearest !== undefined && kmOf(nearest) <= furthestKm ? nearest : null;
}
