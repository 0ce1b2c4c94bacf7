/* global document, getComputedStyle, innerWidth */
/** What the tests look for inside a page. It runs in the browser, as a plain script, and leaves one object behind. */
globalThis.look = (() => {
  /** Half a pixel is no overlap: browsers round. */
  const slack = 0.5;

  const isShown = (element) => element.getClientRects().length > 0 && getComputedStyle(element).visibility !== 'hidden';

  const overlap = (one, other) =>
    one.right > other.left + slack &&
    other.right > one.left + slack &&
    one.bottom > other.top + slack &&
    other.bottom > one.top + slack;

  const isWithin = (inner, outer) =>
    inner.left >= outer.left - slack &&
    inner.right <= outer.right + slack &&
    inner.top >= outer.top - slack &&
    inner.bottom <= outer.bottom + slack;

  /** The text as it is drawn: the box of a line is higher than its letters, by what the font adds above and below. */
  function inked(text) {
    const box = text.getBoundingClientRect();
    const size = Number(text.getAttribute('font-size')) * text.getScreenCTM().a;
    const [base] = [text.getScreenCTM().f + text.y.baseVal[0].value * text.getScreenCTM().d];
    return { left: box.left, right: box.right, top: base - size * 0.75, bottom: base + size * 0.22 };
  }

  return {
    /** The elements that stick out to the right of the screen, as far as a reader would have to scroll for them. */
    tooWide: () =>
      [...document.querySelectorAll('body *')]
        .filter((element) => isShown(element) && !element.closest('svg *') && !element.closest('.unseen'))
        .filter((element) => element.getBoundingClientRect().right > innerWidth + slack)
        .map((element) => element.outerHTML.slice(0, 120)),

    scrolls: () => document.scrollingElement.scrollWidth > innerWidth,

    /** How large the smallest print is, in points, in drawings and in all other words; what is not seen is not counted. */
    smallestPrint: () => {
      const points = 72 / 96;
      const texts = [...document.querySelectorAll('svg text')].filter(isShown);
      const hasWords = (element) =>
        [...element.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== '');
      const words = [...document.querySelectorAll('body *:not(svg *)')].filter(
        (element) => isShown(element) && hasWords(element) && !element.closest('.unseen,svg'),
      );
      return {
        drawing: Math.min(
          ...texts.map((text) => Number(text.getAttribute('font-size')) * text.getScreenCTM().a * points),
        ),
        words: Math.min(...words.map((element) => parseFloat(getComputedStyle(element).fontSize) * points)),
      };
    },

    lonelyBoxes: () =>
      [...document.querySelectorAll('label')].filter(isShown).flatMap((label) => {
        const box = label.querySelector('input[type=checkbox]')?.getBoundingClientRect();
        const words = [...label.querySelectorAll('span:not(.unseen)')].at(-1);
        const [first] = words?.getClientRects() ?? [];
        const isBeside = !box || !first || (first.top < box.bottom && box.top < first.bottom);
        return isBeside ? [] : [label.textContent];
      }),

    /** What overlaps or sticks out in the drawings that are shown, in words; and how many texts were looked at. */
    drawing: () => {
      const flaws = [];
      let texts = 0;
      for (const svg of [...document.querySelectorAll('svg[role=img]')].filter(isShown)) {
        const whole = svg.getBoundingClientRect();
        const lines = [...svg.querySelectorAll('text')].map((text) => ({ text, area: inked(text) }));
        texts += lines.length;
        lines.forEach(({ text, area }, at) => {
          const words = JSON.stringify(text.textContent);
          if (!isWithin(area, whole)) flaws.push(`${words} leaves the drawing`);
          const box = text.closest('g.box')?.querySelector('rect');
          if (box && !isWithin(area, box.getBoundingClientRect())) flaws.push(`${words} leaves its box`);
          for (const other of lines.slice(at + 1))
            if (overlap(area, other.area)) flaws.push(`${words} lies on ${JSON.stringify(other.text.textContent)}`);
        });
      }
      return { flaws, texts };
    },
  };
})();
