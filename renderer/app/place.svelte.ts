import type { Screen } from '../../main/requests/define.ts';

/** Where the person is. */
export class Place {
  screen = $state<Screen>('settings');

  go(screen: Screen): void {
    this.screen = screen;
    location.hash = screen;
  }
}
