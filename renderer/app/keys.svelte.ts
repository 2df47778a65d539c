import { untrack } from 'svelte';

/** A key that does something, with what '?' says about it. */
export interface Key {
  /** As shown and as compared: 'Ctrl+Shift+Z', 'Alt+1', '?'. On a Mac the command key stands for Ctrl. */
  keys: string;
  what: string;
  /** The heading under which '?' lists it: 'Everywhere', 'Loading'. */
  where: string;
  /** Absent where a part handles the key itself and it only has to be listed. */
  run?: () => void;
}

/** Every key that works now. */
export class Keys {
  list = $state.raw<readonly Key[]>([]);

  /** Have keys work (and listed) until the returned function is called; give that to an effect. */
  add(keys: readonly Key[]): () => void {
    // Untracked: the effect that adds keys must not wait for keys that others add.
    this.list = [...untrack(() => this.list), ...keys];
    return () => {
      this.list = untrack(() => this.list).filter((key) => !keys.includes(key));
    };
  }

  press(event: KeyboardEvent): void {
    if (event.defaultPrevented || event.isComposing) return;
    const pressed = keyOf(event);
    // A single sign typed into a field is text.
    if (!/[+].|^F\d+$/.test(pressed) && isTyping(event.target)) return;
    // The library's undo waits while a field holds text that has not been put down yet.
    if (pressed.endsWith('+Z') && event.target instanceof HTMLElement && 'unsaved' in event.target.dataset)
      return;
    const found = this.list.findLast((key) => key.keys === pressed && key.run !== undefined);
    if (found?.run === undefined) return;
    event.preventDefault();
    found.run();
  }
}

/** The name of a key press, as `Key.keys` writes it. */
export function keyOf(event: KeyboardEvent): string {
  // Digits and letters by their place on the keyboard: Alt+1 types another sign on some of them.
  const digit = /^(?:Digit|Numpad)(\d)$/.exec(event.code)?.[1];
  const withControl = event.ctrlKey || event.metaKey;
  const name =
    event.altKey && digit !== undefined
      ? digit
      : event.key.length === 1
        ? event.key.toUpperCase()
        : event.key;
  const isSign = event.key.length === 1 && event.key.toUpperCase() === event.key.toLowerCase();
  return [
    withControl ? 'Ctrl+' : '',
    event.altKey ? 'Alt+' : '',
    // Shift is part of how a sign is made ('?'), and a key of its own with everything else.
    event.shiftKey && !(isSign && digit === undefined) ? 'Shift+' : '',
    name,
  ].join('');
}

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLInputElement ||
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement
  );
}
