import '../tokens.css';
import '../base.css';
import '../../plot/plot.css';
import '../print.css';
import { mount } from 'svelte';
import { showAppearance } from '../../app/appearance.ts';
import { makeClient } from '../../app/client.ts';
import { textPercentOf, themeOf } from '../../app/settings.svelte.ts';
import Parts from './Parts.svelte';
import { partsBridge } from './partsBridge.ts';

// For people who develop: `npx vite renderer`, then /parts.html?theme=dark&text=200. Not shipped.
const asked = new URLSearchParams(location.search);
showAppearance(themeOf(asked.get('theme')), textPercentOf(Number(asked.get('text'))));
const target = document.getElementById('window');
if (target === null) throw new Error('The page has no place for the parts.');
mount(Parts, { target, props: { client: makeClient(partsBridge()) } });
