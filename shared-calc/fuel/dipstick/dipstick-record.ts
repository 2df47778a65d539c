/** A dipstick or sight tube of one tank, read in millimetres beside the gauge after the same pours. */
export interface DipstickRecord {
  id: string;
  tankId: string;
  kind: 'dipstick' | 'sight tube';
  /** From its lowest mark (0) to its highest, 20 to 2000 mm. */
  lengthMm: number;
  /** To what it is read, 1 to 50 mm. */
  readToMm: number;
}
