import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './styles/index.css';
import { App } from './App.tsx';

const page = document.getElementById('page');
if (!page) throw new Error('the page has no place to draw on');
createRoot(page).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
