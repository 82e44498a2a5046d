/**
 * The shapes that the drawings use. The drawing library is taken without its others, its filters and its animations,
 * which saves a tablet about a fifth of it (see resolve.alias in vite.config.ts). A shape that is missing here is
 * said by the library on the console and by the browser tests.
 */
import 'konva/lib/shapes/Circle.js';
import 'konva/lib/shapes/Line.js';
import 'konva/lib/shapes/Rect.js';
import 'konva/lib/shapes/Text.js';
