import type { Figures } from './sayFigures.ts';

/** A message without the figures that stand beside it already. Only for the eye: the whole sentence is what is read out. */
export function shortMessage(message: string, figures: Figures | null): string {
  if (!figures?.needed) return message;
  const { measured } = figures;
  const needed = figures.needed.replace(/ needed$/, '');
  return message
    .replace(`It is ${measured} wide `, message.includes(`${needed} is needed`) ? 'Too narrow ' : 'Narrow ')
    .replace(` is ${measured} wide at its narrowest, `, ' is too narrow ')
    .replace(` is ${measured} clear; ${needed} is needed`, ' is too narrow')
    .replace(`; ${needed} is needed`, '');
}
