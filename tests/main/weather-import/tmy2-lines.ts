// No real file of this kind could be had. These lines are built by the published layout: "User's Manual for TMY2s",
// NREL/SP-463-7668 (June 1995), tables 3-1 and 3-2; the header is laid out as the manual's own sample.

export const tmy2Header = ' 94018 BOULDER                CO  -7 N 40  1 W 105 15  1634';

export interface Tmy2Hour {
  /** 'yymmddhh', hour 1 to 24. */
  stamp: string;
  temperatureC10: number;
  dewPointC10: number;
  pressureHpa: number;
  windFromDeg: number;
  windSpeedMs10: number;
}

/**
 * One hour by the manual's FORTRAN format:
 * (1X,4I2,2I4,7(I4,A1,I1),2(I2,A1,I1),2(I4,A1,I1),1(I3,A1,I1),1(I4,A1,I1),2(I3,A1,I1),1(I4,A1,I1),1(I5,A1,I1),10I1,3(I3,A1,I1),1(I2,A1,I1))
 */
export function tmy2Line(hour: Tmy2Hour): string {
  const i = (value: number, width: number, flags = 'A7') => String(value).padStart(width) + flags;
  return [
    ` ${hour.stamp}`,
    i(0, 4, ''),
    i(0, 4, ''),
    ...Array.from({ length: 7 }, () => i(0, 4, '?0')),
    i(3, 2),
    i(3, 2),
    i(hour.temperatureC10, 4),
    i(hour.dewPointC10, 4),
    i(61, 3),
    i(hour.pressureHpa, 4),
    i(hour.windFromDeg, 3),
    i(hour.windSpeedMs10, 3),
    i(161, 4),
    i(77777, 5),
    '9999999999',
    i(5, 3, 'E8'),
    i(40, 3, 'F8'),
    i(0, 3),
    i(88, 2),
  ].join('');
}

/** Some days of hours, none alike. */
export function tmy2File(dayCount: number): string {
  const lines = [tmy2Header];
  for (let day = 1; day <= dayCount; day++)
    for (let hour = 1; hour <= 24; hour++)
      lines.push(
        tmy2Line({
          stamp: `8206${String(day).padStart(2, '0')}${String(hour).padStart(2, '0')}`,
          temperatureC10: 150 + 5 * Math.abs(hour - 15) - day,
          dewPointC10: 40 + hour,
          pressureHpa: 835 + (hour % 3),
          windFromDeg: 10 * hour,
          windSpeedMs10: 10 + hour,
        }),
      );
  return `${lines.join('\n')}\n`;
}
