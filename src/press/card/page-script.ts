/**
 * What is asked of a card's page while it is laid out, as an expression that gives these functions. Heights
 * are in pixels. The template has `.front` with `.strip`, `.settings` and `.drawings`, and `.flow`
 * with `.side-head`, blocks (`.block`, of which `.keep` are headings) and `.foot`.
 */
export const page = `(() => {
  const find = (selector) => document.querySelector(selector);
  const all = (selector, under = document) => [...under.querySelectorAll(selector)];
  const outer = (element) => {
    const style = getComputedStyle(element);
    return element.getBoundingClientRect().height + parseFloat(style.marginTop) + parseFloat(style.marginBottom);
  };
  const form = ({ density, table, strip }) => {
    const front = find('.front');
    if (front === null) return null;
    front.dataset.density = density;
    find('main').dataset.table = table;
    const hazards = find('.strip');
    if (hazards !== null) hazards.dataset.density = strip;
    return front;
  };
  const show = (indexes) => {
    const figures = all('.front .drawings figure');
    figures.forEach((figure, index) => { figure.hidden = !indexes.includes(index); });
    const band = find('.front .drawings');
    if (band !== null) band.hidden = indexes.length === 0;
  };
  return {
    stripPx(density) {
      const strip = find('.strip');
      if (strip === null) return 0;
      strip.dataset.density = density;
      return strip.getBoundingClientRect().height;
    },
    frontPx(asked) {
      const front = form(asked);
      show([]);
      return front === null ? 0 : front.getBoundingClientRect().height;
    },
    setFront(asked) {
      const front = form(asked);
      show(asked.drawings);
      return front === null ? 0 : front.getBoundingClientRect().height;
    },
    splitFront({ sidePx }) {
      const head = find('.flow .side-head');
      const rows = (host) => all('.settings tbody', host);
      const height = (host) => host.getBoundingClientRect().height;
      let host = find('.front');
      let sides = 1;
      for (; host !== null && height(host) > sidePx; sides++) {
        const over = [];
        while (height(host) > sidePx && rows(host).length > 1) {
          over.unshift(rows(host).at(-1));
          over[0].remove();
        }
        if (over.length === 0) break;
        const side = document.createElement('section');
        side.className = 'front side ' + (sides % 2 === 1 ? 'back' : 'front-again');
        side.dataset.density = host.dataset.density;
        if (head !== null) side.append(head.cloneNode(true));
        const table = find('.front .settings').cloneNode(false);
        table.append(find('.front .settings thead').cloneNode(true), ...over);
        side.append(table);
        host.after(side);
        host = side;
      }
      return { sides, freePx: host === null ? 0 : sidePx - height(host) };
    },
    measureWork({ density, columns, table }) {
      const flow = find('.flow');
      if (flow === null) return { blocks: [], headPx: 0, footPx: 0 };
      const width = find('main').clientWidth;
      const gap = parseFloat(getComputedStyle(flow).columnGap) || 0;
      flow.dataset.density = density;
      find('main').dataset.table = table;
      flow.style.width = width + 'px';
      const foot = find('.flow .foot');
      const head = find('.flow .side-head');
      const around = { headPx: head === null ? 0 : outer(head), footPx: foot === null ? 0 : outer(foot) };
      flow.style.width = (width - gap * (columns - 1)) / columns + 'px';
      const blocks = all('.block', flow).filter((block) => block.getClientRects().length > 0)
        .map((block) => ({ px: outer(block), keep: block.classList.contains('keep') }));
      return { blocks, ...around };
    },
    arrange({ density, sides, onFront, below, alone, sidePx }) {
      const flow = find('.flow');
      if (flow === null) return;
      const blocks = all('.block', flow).filter((block) => block.getClientRects().length > 0);
      const head = find('.flow .side-head');
      const foot = find('.flow .foot');
      const figures = all('.front .drawings figure');
      const fronts = Math.max(1, all('.front').length);
      const opened = (index) => {
        const side = document.createElement('section');
        side.className = 'side running ' + ((index + fronts) % 2 === 1 ? 'back' : 'front-again');
        side.dataset.density = density;
        if (head !== null) side.append(head.cloneNode(true));
        return side;
      };
      const band = (indexes) => {
        const element = document.createElement('div');
        element.className = 'drawings';
        for (const at of indexes) { figures[at].hidden = false; element.append(figures[at]); }
        return element;
      };
      const made = sides.map((columns, index) => {
        const side = opened(index);
        const row = document.createElement('div');
        row.className = 'columns';
        for (const column of columns) {
          const element = document.createElement('div');
          element.className = 'column';
          element.append(...column.map((at) => blocks[at]));
          row.append(element);
        }
        side.append(row);
        return side;
      });
      const lastFront = all('.front').at(-1);
      if (onFront.length > 0) lastFront?.append(band(onFront));
      if (below.length > 0) made.at(-1)?.append(band(below));
      if (foot !== null) made.at(-1)?.append(foot);
      if (alone.length > 0) {
        const side = opened(made.length);
        side.append(band(alone));
        made.push(side);
      }
      for (const figure of figures) if (figure.hidden) figure.remove();
      flow.replaceWith(...made);
      // Captions may take more lines than was reckoned with: what has no room is left out.
      for (const side of fronts > 1 ? [lastFront, ...made] : made) {
        const drawn = all('.drawings figure', side);
        while (drawn.length > 0 && side.getBoundingClientRect().height > sidePx) drawn.pop().remove();
        if (drawn.length === 0) side.querySelector('.drawings')?.remove();
      }
      const full = made.findIndex((side) => side.querySelector('.hazard') !== null);
      for (const place of all('.full-side')) place.textContent = String(full + 1 + fronts);
    },
    measures({ sidePx, topPx, pagePx }) {
      const box = (element) => element.getBoundingClientRect();
      const front = find('.front');
      const settings = find('.front .settings');
      const strip = find('.strip');
      const cells = all('.settings td:is(.found, .left)').map(box);
      const steps = all('.steps > ol > li');
      const over = (element) => {
        const side = element.closest('.side');
        return side !== null && box(element).bottom - box(side).top > sidePx + 1;
      };
      return {
        tableStart: settings === null ? 0 : (box(settings).top - box(front).top + topPx) / pagePx,
        tableOnFront: settings === null || (all('.settings').length === 1 && box(settings).bottom - box(front).top <= sidePx + 1),
        overCells: all('.settings .as-written').filter((cell) => {
          const words = document.createRange();
          words.selectNodeContents(cell);
          const next = cell.closest('tr').querySelector('.found');
          return words.getBoundingClientRect().right > box(next ?? cell).left + (next === null ? 0 : 0.5) && next !== null;
        }).length,
        stripPx: strip === null ? 0 : box(strip).height,
        writeInPx: cells.length === 0 ? null : {
          width: Math.min(...cells.map(({ width }) => width)), height: Math.min(...cells.map(({ height }) => height)),
        },
        broken: all('.operation').filter(over).length,
        runIn: steps.filter((step) => getComputedStyle(step).display !== 'list-item').length,
        steps: steps.length,
        drawings: all('.drawings figure').length,
      };
    },
  };
})()`;
