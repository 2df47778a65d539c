/** Mean radius of the Earth (IUGG). */
const earthRadiusM = 6_371_009;

interface Place {
  latitudeDeg: number;
  longitudeDeg: number;
}

/** Way over the Earth, taken as a sphere (haversine); within 0.6 %. */
export function distanceM(a: Place, b: Place): number {
  const rad = Math.PI / 180;
  const halfLatitude = ((b.latitudeDeg - a.latitudeDeg) * rad) / 2;
  const halfLongitude = ((b.longitudeDeg - a.longitudeDeg) * rad) / 2;
  const chord =
    Math.sin(halfLatitude) ** 2 +
    Math.cos(a.latitudeDeg * rad) * Math.cos(b.latitudeDeg * rad) * Math.sin(halfLongitude) ** 2;
  return 2 * earthRadiusM * Math.asin(Math.min(1, Math.sqrt(chord)));
}
