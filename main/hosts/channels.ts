/** The channels between the preload and the Electron host; nothing else is heard. */
export const channels = {
  request: 'tarewing:request',
  cancel: 'tarewing:cancel',
  event: 'tarewing:event',
  print: 'tarewing:print',
} as const;

/** Where the window's own files live. */
export const windowScheme = 'app';
export const windowOrigin = 'app://bundle';
