/** Stands in for the drawing library's animations (vite.config.ts), which no drawing here uses. */
export class Tween {
  constructor() {
    throw new Error('Animations are left out of the page: see vite.config.ts.');
  }
}
export const Easings = {};
