import type { Contrast, TextPercent, Theme } from './settings.svelte.ts';

const darkSystem = matchMedia('(prefers-color-scheme: dark)');

/** Put theme, text scale and contrast on the page. Called before the window is built, and again when a setting changes. */
export function showAppearance(theme: Theme, textPercent: TextPercent, contrast: Contrast = 'usual'): void {
  const root = document.documentElement;
  root.dataset['theme'] = theme === 'system' ? (darkSystem.matches ? 'dark' : 'light') : theme;
  root.dataset['contrast'] = contrast;
  root.style.fontSize = `${String(textPercent)}%`;
}

/** Be told when the system changes between light and dark, until the returned function is called. */
export function onSystemTheme(listener: () => void): () => void {
  darkSystem.addEventListener('change', listener);
  return () => {
    darkSystem.removeEventListener('change', listener);
  };
}
