import type { Source } from './source.ts';

const read = { edition: 'stored copy', status: 'found' } as const;

/** Row D10 of the index, one source for each rule set, so that a class cites its own alone. */
export const fixtureRows = {
  'D10-california': { ...read, document: '22 CCR', clause: '101239', jurisdiction: 'California' },
  'D10-new-york': { ...read, document: '8 NYCRR', clause: '125.2', jurisdiction: 'New York' },
  'D10-maryland': { ...read, document: 'COMAR', clause: '13A.17.05.08', jurisdiction: 'Maryland' },
  'D10-texas': { ...read, document: '26 TAC', clause: '746', jurisdiction: 'Texas', secondHand: true },
  'D10-scotland': { ...read, document: 'Space to Grow', clause: 'appendix 1', jurisdiction: 'Scotland' },
  'D10-england': {
    document: 'Older guidance, children over two; the framework in force asks for an adequate number',
    clause: '',
    edition: '',
    jurisdiction: 'England',
    status: 'memory',
  },
} as const satisfies Readonly<Record<string, Source>>;
