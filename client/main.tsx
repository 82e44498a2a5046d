import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './styles/index.css';
import { App } from './App.tsx';
import { pageUpdate } from './session/pageUpdate.ts';

const page = document.getElementById('page');
if (!page) throw new Error('the page has no place to draw on');
pageUpdate.begin();
createRoot(page).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
