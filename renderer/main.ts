import './ui/tokens.css';
import { mount } from 'svelte';
import App from './app/App.svelte';
import { makeClient } from './app/client.ts';
import { findBridge } from './app/find-bridge.ts';

const target = document.getElementById('window');
if (target === null) throw new Error('The page has no place for the window.');
mount(App, { target, props: { client: makeClient(await findBridge()) } });
