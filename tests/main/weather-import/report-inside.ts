/**
 * What the text of a report says, read by plain patterns: the outside check of the columns beside it in a file. Only
 * groups that are written in one way are read.
 */
export interface ReportInside {
  /** day, hour, minute UTC */
  time: [number, number, number] | null;
  temperatureC: number | null;
  dewPointC: number | null;
  settingInHg: number | null;
  seaLevelHpaTail: number | null;
  speedKt: number | null;
  gustKt: number | null;
  fromDeg: number | 'VRB' | null;
}

export function reportInside(text: string): ReportInside {
  const time = /\b(\d\d)(\d\d)(\d\d)Z\b/.exec(text);
  const tenths = /\bT([01])(\d{3})([01])(\d{3})\b/.exec(text);
  const setting = /\bA([23]\d{3})\b/.exec(text);
  const slp = /\bSLP(\d{3})\b/.exec(text);
  const wind = /\b(\d{3}|VRB)(\d\d)(?:G(\d\d))?KT\b/.exec(text);
  const signed = (sign?: string, size?: string) => ((sign === '1' ? -1 : 1) * Number(size)) / 10;
  return {
    time: time === null ? null : [Number(time[1]), Number(time[2]), Number(time[3])],
    temperatureC: tenths === null ? null : signed(tenths[1], tenths[2]),
    dewPointC: tenths === null ? null : signed(tenths[3], tenths[4]),
    settingInHg: setting === null ? null : Number(setting[1]) / 100,
    seaLevelHpaTail: slp === null ? null : Number(slp[1]) / 10,
    speedKt: wind === null ? null : Number(wind[2]),
    gustKt: wind?.[3] === undefined ? null : Number(wind[3]),
    fromDeg: wind === null ? null : wind[1] === 'VRB' ? 'VRB' : Number(wind[1]),
  };
}
