import { type RefObject, useLayoutEffect, useState } from 'react';

/** px inside an element, followed as it changes. Zero until it is laid out. */
export function useBoxSize(box: RefObject<HTMLElement | null>): { width: number; height: number } {
  const [size, setSize] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const read = () => {
      const next = { width: Math.floor(element.clientWidth), height: Math.floor(element.clientHeight) };
      setSize((now) => (now.width === next.width && now.height === next.height ? now : next));
    };
    read();
    const observer = new ResizeObserver(read);
    observer.observe(element);
    return () => observer.disconnect();
  }, [box]);
  return size;
}
