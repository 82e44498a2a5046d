import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import '@fontsource-variable/source-serif-4/index.css';
import '@fontsource-variable/source-serif-4/wght-italic.css';
import './styles/index.css';
import { App } from './App.tsx';
import { pageUpdate } from './session/pageUpdate.ts';
import { fetchLostStyles } from './ui/late.tsx';

const page = document.getElementById('page');
if (!page) throw new Error('the page has no place to draw on');
fetchLostStyles();
pageUpdate.begin();
createRoot(page).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
