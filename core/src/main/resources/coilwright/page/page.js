(function () {
  'use strict';
  var BODY = document.body;
  var PREFIX = 'coilwright 1 ' + BODY.getAttribute('data-job') + ' ';
  var told = JSON.parse(document.getElementById('winding-data').textContent);
  var entries = {};

  function each(root, selector, act) {
    Array.prototype.forEach.call(root.querySelectorAll(selector), act);
  }
  function one(root, selector) { return root.querySelector(selector); }
  function say(element, words) {
    if (element.textContent !== words) { element.textContent = words; }
  }
  function minus(words) { return words.replace(/-/g, '\u2212'); }

  /* What is entered is kept in the browser; where it refuses, at least as long as the page is open. */

  var refused = false;
  function complain(words) {
    var note = document.getElementById('storage');
    say(note, words);
    note.hidden = false;
  }
  function refuse() {
    if (refused) { return; }
    refused = true;
    complain('\u26A0 This browser keeps nothing for this page: entries are lost when it is closed or loaded anew. ' +
      'Save them as CSV before that.');
  }
  function load(key) {
    var text = null;
    try { text = window.localStorage.getItem(PREFIX + key); } catch (e) { refuse(); }
    if (text === null) { return {}; }
    try {
      var found = JSON.parse(text);
      return found && typeof found === 'object' && !Array.isArray(found) ? found : {};
    } catch (e) { return {}; }
  }
  function keep(key, what) {
    entries[key] = what;
    try {
      if (Object.keys(what).length === 0) { window.localStorage.removeItem(PREFIX + key); }
      else { window.localStorage.setItem(PREFIX + key, JSON.stringify(what)); }
    } catch (e) { refuse(); }
  }
  function kept(key) {
    if (!Object.prototype.hasOwnProperty.call(entries, key)) { entries[key] = load(key); }
    return entries[key];
  }
  function text(what, key) {
    var v = Object.prototype.hasOwnProperty.call(what, key) ? what[key] : '';
    return typeof v === 'string' ? v.slice(0, 16) : '';
  }
  function put(key, name, value) {
    var what = kept(key);
    if (value === '' || value === false) { delete what[name]; } else { what[name] = value; }
    keep(key, what);
  }

  /* Steps with ticks. */

  function tickKey(section) {
    return 'ticks ' + (section.getAttribute('data-ticks') || section.getAttribute('data-test'));
  }
  function showTicks(section) {
    var what = kept(tickKey(section));
    each(section, '[data-tick]', function (box) { box.checked = what[box.getAttribute('data-tick')] === true; });
    countTicks(section);
  }
  function countTicks(section) {
    var all = section.querySelectorAll('[data-tick]').length;
    var done = section.querySelectorAll('[data-tick]:checked').length;
    each(section, '[data-count]', function (count) { say(count, done + ' of ' + all + ' ticked'); });
  }

  /* Readings. */

  function parse(written) {
    var t = written.trim().replace(/\u2212/g, '-');
    if (t === '') { return null; }
    if (/^(ol|o\.l\.?|0l|open|inf|\u221e)$/i.test(t)) { return { number: Infinity, text: 'OL' }; }
    if (t.indexOf('.') < 0) { t = t.replace(',', '.'); }
    if (!/^[+-]?(\d{1,12}(\.\d{0,12})?|\.\d{1,12})$/.test(t)) { return { number: NaN, text: '' }; }
    t = t.replace(/^\+/, '').replace(/^(-?)\./, '$10.').replace(/\.$/, '');
    return { number: Number(t), text: t };
  }
  function median(values) {
    var sorted = values.slice().sort(function (a, b) { return a - b; });
    var half = Math.floor(sorted.length / 2);
    return sorted.length % 2 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }
  /* The ratio that most readings share; none where not even a third of them do. */
  function agreement(ratios, tolerance) {
    var best = [];
    ratios.forEach(function (r) {
      if (Math.abs(r) < 1e-12) { return; }
      var near = ratios.filter(function (q) { return Math.abs(q - r) <= tolerance * Math.abs(r); });
      if (near.length > best.length) { best = near; }
    });
    return best.length >= 2 && best.length * 3 >= ratios.length ? median(best) : null;
  }
  function rowsOf(section) {
    return Array.prototype.map.call(section.querySelectorAll('.rows li'), function (li) {
      var e = li.getAttribute('data-expected');
      var entry = one(li, '[data-entry]');
      var read = parse(entry.value);
      return {
        li: li, entry: entry, read: read, words: li.getAttribute('data-words'),
        expected: e === 'open' ? Infinity : Number(e)
      };
    });
  }
  function unitOf(section) {
    var select = one(section, '[data-do="unit"]');
    if (!select) { return { name: '', factor: 1 }; }
    var option = select.options[select.selectedIndex];
    return { name: option.value, factor: Number(option.getAttribute('data-factor')) };
  }
  function percent(share) {
    var p = Math.abs(share) * 100;
    return (p < 10 ? p.toFixed(1) : p.toFixed(0)) + ' %';
  }

  /* How one reading compares: said in words, and whether it stands out. */
  function compare(row, scale, most, tolerance, signed, least, leastWords) {
    var e = row.expected;
    var v = row.read.number * row.factor;
    if (isNaN(v)) {
      return { off: true, words: '\u2716 not a number: write one such as 12.3, or OL for off the scale' };
    }
    if (e === Infinity) {
      if (v === Infinity) { return { off: false, words: '\u2713 open, as expected' }; }
      if (least > 0) {
        return v >= least
          ? { off: false, words: '\u2713 ' + leastWords }
          : { off: true, words: '\u2716 joined to the shaft: insulation ' + leastWords + ' is expected' };
      }
      return { off: true, words: '\u2716 not open: nothing should join these two' };
    }
    if (v === Infinity) { return { off: true, words: '\u2716 open: expected ' + row.words }; }
    if (most === 0 && v !== 0) { return { off: true, words: '\u2716 nothing expected here' }; }
    if (scale === null && most > 0) { return { off: false, words: '' }; }
    var sound = e * scale;
    if (Math.abs(e) < 1e-6 * most || most === 0) {
      return Math.abs(v) > tolerance * most * Math.abs(scale)
        ? { off: true, words: '\u2716 nothing expected here' }
        : { off: false, words: '\u2713 nothing, as expected' };
    }
    if (!signed) { v = Math.abs(v); sound = Math.abs(sound); }
    /* A pair that should read next to nothing is not held to a share of that. */
    if (Math.abs(v - sound) <= tolerance * 0.1 * most * Math.abs(scale)) { return { off: false, words: '\u2713 fits' }; }
    var ratio = v / sound;
    if (Math.abs(ratio) < 0.05) { return { off: true, words: '\u25BC reads nothing, or nearly' }; }
    if (ratio < 0) {
      return { off: true, words: '\u21C4 wrong sign' + (Math.abs(1 + ratio) > tolerance ? ', and ' + size(-ratio) : '') };
    }
    var d = ratio - 1;
    if (Math.abs(d) <= tolerance + 1e-9) { return { off: false, words: '\u2713 fits' }; }
    return { off: true, words: (d > 0 ? '\u25B2 ' : '\u25BC ') + size(ratio) };
  }
  function size(ratio) {
    return ratio >= 2 ? ratio.toFixed(1) + ' times what is expected'
      : percent(ratio - 1) + (ratio > 1 ? ' high' : ' low');
  }
  function judgeSense(row) {
    var v = row.read.number;
    if (v === row.expected) { return { off: false, words: '\u2713 fits' }; }
    return { off: true, words: v === 0 ? '\u2716 the needle stays still' : '\u21C4 the other way' };
  }

  function judge(section) {
    var unit = unitOf(section);
    var signed = section.getAttribute('data-signed') === 'yes';
    var known = section.getAttribute('data-known') === 'yes';
    var kind = section.getAttribute('data-kind');
    var least = kind === 'ground' ? Number(section.getAttribute('data-least')) : 0;
    var leastWords = section.getAttribute('data-least-words');
    var select = one(section, '[data-do="tolerance"]');
    var tolerance = select ? Number(select.value) : 0.1;
    var rows = rowsOf(section);
    var most = 0;
    rows.forEach(function (r) { if (isFinite(r.expected)) { most = Math.max(most, Math.abs(r.expected)); } });
    var ratios = [];
    rows.forEach(function (r) {
      r.factor = unit.factor;
      if (r.read && isFinite(r.read.number) && isFinite(r.expected) && Math.abs(r.expected) > 0.02 * most) {
        var ratio = r.read.number * unit.factor / r.expected;
        ratios.push(signed ? ratio : Math.abs(ratio));
      }
    });
    /* Amperes, temperature and wire move all readings alike: each is held against what most agree on. */
    var scale = known ? 1 : null;
    if (ratios.length >= 5 || (!known && ratios.length >= 3)) {
      var agreed = agreement(ratios, tolerance);
      scale = agreed === null ? scale : agreed;
    }
    var entered = 0, off = 0, bad = 0;
    rows.forEach(function (r) {
      var says = one(r.li, '.says');
      if (!r.read) { say(says, ''); says.className = 'says'; r.entry.removeAttribute('aria-invalid'); return; }
      entered++;
      var verdict = kind === 'polarity' ? judgeSense(r)
        : compare(r, scale, most, tolerance, signed, least, leastWords);
      if (isNaN(r.read.number)) { bad++; r.entry.setAttribute('aria-invalid', 'true'); }
      else { r.entry.removeAttribute('aria-invalid'); }
      if (verdict.off) { off++; }
      say(says, verdict.words);
      says.className = 'says ' + (verdict.off ? 'off' : 'fits');
    });
    one(section, 'progress').value = entered;
    say(one(section, '[data-progress]'), entered + ' of ' + rows.length + ' read' +
      (entered === 0 ? '' : off === 0 ? ', none stands out' : off === 1 ? ', 1 stands out' : ', ' + off + ' stand out'));
    say(one(section, '[data-overall]'), overall(ratios, scale, known, kind));
    each(section, '[data-unit]', function (u) { say(u, unit.name === '' ? '' : ' in ' + unit.name); });
    exported(section, rows, unit, bad);
  }
  function overall(ratios, scale, known, kind) {
    if (kind === 'polarity' || scale === null) {
      return ratios.length > 0 && kind !== 'polarity' ? 'Readings are compared once three are there.' : '';
    }
    if (!known || ratios.length < 5) { return ''; }
    if (scale < 0) { return 'Nearly all signs are turned round: change the probes or the feed over, or mind it.'; }
    return Math.abs(scale - 1) > 0.1
      ? 'All together are ' + percent(scale - 1) + (scale > 1 ? ' above' : ' below') +
        ' what is expected: look at the unit, the feed current, the temperature, the wire and the turns. ' +
        'Each is compared with the others.'
      : '';
  }

  function csvOf(rows, unit) {
    var lines = ['from,to,reading'];
    rows.forEach(function (r) {
      if (r.read && !isNaN(r.read.number)) {
        lines.push(r.li.getAttribute('data-from') + ',' + r.li.getAttribute('data-to') + ',' + r.read.text +
          (unit.name === '' || r.read.number === Infinity ? '' : ' ' + unit.name));
      }
    });
    return lines.join('\n') + '\n';
  }
  function exported(section, rows, unit, bad) {
    one(section, '[data-csv]').value = csvOf(rows, unit);
    say(one(section, '[data-export]'), bad === 0 ? ''
      : bad === 1 ? 'One entry is not a number and is left out.' : bad + ' entries are not numbers and are left out.');
  }
  function showReadings(section) {
    var what = kept('readings ' + section.getAttribute('data-test'));
    each(section, '[data-do="unit"],[data-do="tolerance"]', function (select) {
      var name = '=' + select.getAttribute('data-do');
      var usual = 0;
      var wanted = typeof what[name] === 'string' ? what[name].replace(/^=/, '') : null;
      Array.prototype.forEach.call(select.options, function (o, i) {
        if (wanted === null ? o.defaultSelected : o.value === wanted) { usual = i; }
      });
      select.selectedIndex = usual;
    });
    each(section, '.rows li', function (li) { one(li, '[data-entry]').value = text(what, pairOf(li)); });
    judge(section);
  }
  function pairOf(li) { return li.getAttribute('data-from') + '-' + li.getAttribute('data-to'); }
  function sectionOf(element) { return element.closest('section'); }
  function noteEntry(entry) {
    var section = sectionOf(entry);
    put('readings ' + section.getAttribute('data-test'), pairOf(entry.closest('li')), entry.value.trim());
    judge(section);
  }
  function next(entry) {
    var all = Array.prototype.slice.call(sectionOf(entry).querySelectorAll('[data-entry]'));
    var at = all.indexOf(entry) + 1;
    if (at < all.length) { all[at].focus(); } else { entry.blur(); }
  }

  /* The drawing. */

  var kind = 'coil', number = 0, lit = [];
  var zooms = { round: 0, developed: null };
  function pan() { return one(document, '.pan:not([hidden])'); }
  function found(kindOf, n) {
    return told[kindOf].filter(function (t) { return t[0] === n; })[0];
  }
  function unlight() {
    lit.slice().reverse().forEach(function (l) {
      l.group.classList.remove('lit');
      l.parent.insertBefore(l.group, l.before);
    });
    lit = [];
  }
  function light(kindOf, n) {
    each(document, '.pan [data-' + kindOf + '="' + n + '"]', function (group) {
      if (group.tagName !== 'g') { return; }
      lit.push({ group: group, parent: group.parentNode, before: group.nextSibling });
      group.classList.add('lit');
      group.parentNode.appendChild(group);
    });
  }
  function choose(kindOf, n, quiet) {
    var t = found(kindOf, n);
    if (!t) { return; }
    kind = kindOf;
    number = n;
    unlight();
    t[5].forEach(function (s) { light('slot', s); });
    t[3].forEach(function (c) { light('coil', c); });
    t[4].forEach(function (b) { light('bar', b); });
    var words = document.getElementById('told');
    words.textContent = '';
    var strong = document.createElement('strong');
    strong.textContent = t[1];
    words.appendChild(strong);
    words.appendChild(document.createTextNode(' ' + t[2]));
    document.getElementById('pick').value = String(n);
    pressed('kind', kindOf);
    if (!quiet) { reveal(); }
  }
  function pressed(name, value) {
    each(document, '[data-do="' + name + '"]', function (b) {
      b.setAttribute('aria-pressed', String(b.getAttribute('data-' + name) === value));
    });
  }
  function reveal() {
    var box = pan();
    var group = one(box, 'g.' + kind + '.lit');
    if (!group) { return; }
    var a = box.getBoundingClientRect(), b = group.getBoundingClientRect();
    if (b.left < a.left || b.right > a.right || b.top < a.top || b.bottom > a.bottom) {
      box.scrollLeft += (b.left + b.right) / 2 - (a.left + a.right) / 2;
      box.scrollTop += (b.top + b.bottom) / 2 - (a.top + a.bottom) / 2;
    }
  }
  /* The nearest thing within half of the 44 pixels that a finger in a glove takes. */
  function nearest(box, x, y) {
    for (var r = 0; r <= 22; r += 3) {
      for (var i = 0, n = r === 0 ? 1 : Math.max(8, Math.round(r * 1.6)); i < n; i++) {
        var hit = document.elementFromPoint(x + r * Math.cos(2 * Math.PI * i / n), y + r * Math.sin(2 * Math.PI * i / n));
        var group = hit && box.contains(hit) && hit.closest('[data-coil],[data-bar],[data-slot]');
        if (group) { return group; }
      }
    }
    return null;
  }
  function touch(event) {
    var box = event.currentTarget;
    var group = nearest(box, event.clientX, event.clientY);
    if (!group) { return; }
    ['coil', 'bar', 'slot'].forEach(function (k) {
      if (group.hasAttribute('data-' + k)) { choose(k, Number(group.getAttribute('data-' + k)), true); }
    });
  }
  function step(by) {
    var list = told[kind];
    var at = -1;
    list.forEach(function (t, i) { if (t[0] === number) { at = i; } });
    at = at < 0 ? (by > 0 ? 0 : list.length - 1) : (at + by + list.length) % list.length;
    choose(kind, list[at][0]);
  }
  function zoom(by) {
    var box = pan(), view = box.getAttribute('data-view'), svg = one(box, 'svg');
    var whole = box.clientWidth, now = svg.getBoundingClientRect().width;
    if (whole === 0) { return; }
    var wanted = by === 0 ? whole : Math.max(whole, Math.min(now * (by > 0 ? 1.5 : 1 / 1.5),
      Number(box.getAttribute('data-width')) * 8));
    var x = (box.scrollLeft + box.clientWidth / 2) / now, y = (box.scrollTop + box.clientHeight / 2) / now;
    zooms[view] = wanted;
    svg.style.width = wanted === whole ? '100%' : Math.round(wanted) + 'px';
    box.scrollLeft = x * wanted - box.clientWidth / 2;
    box.scrollTop = y * wanted - box.clientHeight / 2;
    if (number) { reveal(); }
  }
  function show(view) {
    each(document, '.pan', function (p) { p.hidden = p.getAttribute('data-view') !== view; });
    pressed('view', view);
    if (view === 'developed' && zooms.developed === null) { fill(); }
    if (number) { reveal(); }
  }
  /* A developed drawing is long: it begins as high as its box. */
  function fill() {
    var box = pan(), svg = one(box, 'svg'), size = svg.viewBox.baseVal;
    var wanted = Math.max(box.clientWidth, (Math.min(window.innerHeight * 0.7, 640) - 20) * size.width / size.height);
    zooms.developed = wanted;
    svg.style.width = Math.round(wanted) + 'px';
  }

  /* Buttons. */

  function counted(n, noun) { return n + ' ' + noun + (n === 1 ? '' : 's'); }

  function sure(button, open) {
    var box = one(button.closest('.clear'), '[data-sure]');
    var first = one(button.closest('.clear'), '[data-do="clear"]');
    box.hidden = !open;
    first.setAttribute('aria-expanded', String(open));
    if (!open) { first.focus(); return; }
    var section = sectionOf(button);
    var ticks = section.querySelectorAll('[data-tick]:checked').length;
    var read = 0;
    each(section, '[data-entry]', function (e) { if (e.value.trim() !== '') { read++; } });
    say(one(box, 'span'), 'Clear ' + (section.hasAttribute('data-test') ? counted(read, 'reading') + ' and ' : '') +
      counted(ticks, 'tick') + ' here? This cannot be undone.');
    one(box, '[data-do="clear-no"]').focus();
  }
  function clear(button) {
    var section = sectionOf(button);
    keep(tickKey(section), {});
    showTicks(section);
    if (section.hasAttribute('data-test')) {
      keep('readings ' + section.getAttribute('data-test'), {});
      showReadings(section);
    }
    sure(button, false);
  }
  function copy(section) {
    var area = one(section, '[data-csv]');
    area.focus();
    area.select();
    area.setSelectionRange(0, area.value.length);
    var done = false;
    try { done = document.execCommand('copy'); } catch (e) { done = false; }
    say(one(section, '[data-export]'), done ? 'Copied.' : 'The text is marked: press and hold it to copy.');
  }
  function save(section, link) {
    var blob = new Blob([one(section, '[data-csv]').value], { type: 'text/csv' });
    var url = URL.createObjectURL(blob);
    link.href = url;
    link.download = section.getAttribute('data-file');
    window.setTimeout(function () {
      URL.revokeObjectURL(url);
      link.href = '#' + section.id;
      link.removeAttribute('download');
    }, 10000);
  }
  function go(element) {
    if (!element) { return; }
    element.focus();
    element.scrollIntoView({ block: 'center' });
  }

  document.addEventListener('click', function (event) {
    var button = event.target.closest('[data-do]');
    if (!button || button.tagName === 'SELECT') { return; }
    var section = sectionOf(button);
    switch (button.getAttribute('data-do')) {
      case 'view': show(button.getAttribute('data-view')); break;
      case 'kind':
        kind = button.getAttribute('data-kind');
        choose(kind, found(kind, number) ? number : told[kind][0][0]);
        break;
      case 'step': step(Number(button.getAttribute('data-by'))); break;
      case 'zoom': zoom(Number(button.getAttribute('data-by'))); break;
      case 'open-all': each(document, 'details', function (d) { d.open = true; }); break;
      case 'close-all': each(document, 'details', function (d) { d.open = false; }); break;
      case 'print': window.print(); break;
      case 'next-tick': go(one(section, '[data-tick]:not(:checked)')); break;
      case 'next':
        go(Array.prototype.filter.call(section.querySelectorAll('[data-entry]'), function (e) {
          return e.value.trim() === '';
        })[0]);
        break;
      case 'sign': {
        var entry = one(button.closest('li'), '[data-entry]');
        var t = entry.value.trim().replace(/\u2212/g, '-');
        entry.value = t.charAt(0) === '-' ? t.slice(1) : '-' + t.replace(/^\+/, '');
        if (entry.value === '-') { entry.focus(); } else { noteEntry(entry); }
        break;
      }
      case 'open': {
        var field = one(button.closest('li'), '[data-entry]');
        field.value = field.value === 'OL' ? '' : 'OL';
        noteEntry(field);
        break;
      }
      case 'save': save(section, button); break;
      case 'copy': copy(section); break;
      case 'clear': sure(button, button.getAttribute('aria-expanded') !== 'true'); break;
      case 'clear-yes': clear(button); break;
      case 'clear-no': sure(button, false); break;
    }
  });
  document.addEventListener('input', function (event) {
    var e = event.target;
    if (e.hasAttribute('data-entry') && e.value.trim() !== '-') { noteEntry(e); }
    if (e.id === 'pick' && /^\d+$/.test(e.value.trim())) {
      var at = e.selectionStart;
      choose(kind, Number(e.value.trim()));
      e.setSelectionRange(at, at);
    }
  });
  document.addEventListener('change', function (event) {
    var e = event.target;
    if (e.hasAttribute('data-tick')) {
      put(tickKey(sectionOf(e)), e.getAttribute('data-tick'), e.checked);
      countTicks(sectionOf(e));
    } else if (e.tagName === 'SELECT' && e.hasAttribute('data-do')) {
      put('readings ' + sectionOf(e).getAttribute('data-test'), '=' + e.getAttribute('data-do'), '=' + e.value);
      judge(sectionOf(e));
    }
  });
  document.addEventListener('keydown', function (event) {
    var e = event.target;
    if (event.key === 'Enter' && e.hasAttribute && e.hasAttribute('data-entry')) {
      event.preventDefault();
      next(e);
    }
  });
  each(document, '.pan', function (p) { p.addEventListener('click', touch); });
  window.addEventListener('storage', function () {
    entries = {};
    all();
  });

  function all() {
    each(document, 'section[data-ticks],section[data-test]', showTicks);
    each(document, 'section[data-test]', showReadings);
  }
  all();
}());
