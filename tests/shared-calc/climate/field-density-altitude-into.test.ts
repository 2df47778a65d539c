import { expect, test } from 'vitest';
import { fieldDensityAltitudeInto } from '../../../shared-calc/climate/field-density-altitude-into.ts';
import { fieldDensityAltitudeM } from '../../../shared-calc/climate/field-density-altitude.ts';

test('hour by hour it is the exact figure within 1 cm, also in air drier than the fast way’s tables', () => {
  const temperatureC = Float64Array.of(-40, -20, 0, 15, 31.4, 45, 20, 20, 70, NaN);
  const dewPointC = Float64Array.of(-60, -50, -46, 10, 31.4, -44.9, NaN, 5, 10, 0);
  const settingHpa = Float64Array.of(1013.25, 980, 1040, 1013.25, 1005, 1009, 1013, NaN, 1013, 1013);
  for (const elevationM of [-100, 0, 1372, 3000]) {
    const outM = new Float64Array(temperatureC.length);
    fieldDensityAltitudeInto(outM, settingHpa, temperatureC, dewPointC, elevationM);
    outM.forEach((altitudeM, i) => {
      const exactM = fieldDensityAltitudeM(
        {
          temperatureC: temperatureC[i] ?? NaN,
          dewPointC: dewPointC[i] ?? NaN,
          altimeterSettingHpa: settingHpa[i] ?? NaN,
          stationPressureHpa: NaN,
          seaLevelPressureHpa: NaN,
        },
        elevationM,
        elevationM,
      );
      if (Number.isNaN(exactM)) expect(altitudeM).toBeNaN();
      else expect(Math.abs(altitudeM - exactM)).toBeLessThan(0.01);
    });
  }
});
