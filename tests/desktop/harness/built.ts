import { prepare } from '../../../main/hosts/prepare.mjs';

/** Before the desktop checks: the program that they drive is built from what is there now. */
export default function setup(): void {
  prepare((line) => {
    console.log(line);
  });
}
