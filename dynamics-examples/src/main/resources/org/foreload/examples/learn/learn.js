// Interpolates the table, cubic in each slider, and draws what comes of it. No physics is computed here.
(function () {
  'use strict';
  var table = JSON.parse(document.getElementById('table').textContent);
  var nodes = table.nodes, names = table.names, numbers = table.numbers;
  var hardest = nodes[0][nodes[0].length - 1];
  var STEP = 0.05; // of the coarse search for d*, m/s²
  var ids = ['deceleration', 'share', 'height', 'surface'];
  var sliders = ids.map(function (id) { return document.getElementById(id); });
  var still = window.matchMedia('(prefers-reduced-motion: reduce)');
  var timer = null;

  function first(n, at) {
    var below = 0;
    while (below < n.length - 2 && n[below + 1] <= at) { below++; }
    return Math.max(0, Math.min(n.length - 4, below - 1));
  }

  function weights(n, from, at) {
    return [0, 1, 2, 3].map(function (i) {
      var weight = 1;
      for (var j = 0; j < 4; j++) {
        if (j !== i) { weight *= (at - n[from + j]) / (n[from + i] - n[from + j]); }
      }
      return weight;
    });
  }

  // The table for one share, height and surface: a list of quantities for each node of deceleration.
  function slice(share, height, surface) {
    var at = [0, share, height, surface], from = [], w = [];
    for (var i = 1; i < 4; i++) {
      from[i] = first(nodes[i], at[i]);
      w[i] = weights(nodes[i], from[i], at[i]);
    }
    return nodes[0].map(function (ignored, d) {
      var values = names.map(function () { return 0; });
      for (var l = 0; l < 4; l++) {
        for (var k = 0; k < 4; k++) {
          for (var j = 0; j < 4; j++) {
            var weight = w[1][j] * w[2][k] * w[3][l];
            var cell = from[3] + l;
            cell = cell * nodes[2].length + from[2] + k;
            cell = cell * nodes[1].length + from[1] + j;
            cell = cell * nodes[0].length + d;
            for (var q = 0; q < names.length; q++) { values[q] += weight * numbers[cell * names.length + q]; }
          }
        }
      }
      return values;
    });
  }

  function at(part, deceleration) {
    var from = first(nodes[0], deceleration), w = weights(nodes[0], from, deceleration);
    var all = {};
    names.forEach(function (name, q) {
      var value = 0;
      for (var i = 0; i < 4; i++) { value += w[i] * part[from + i][q]; }
      all[name] = value;
    });
    function root(kiloSquared) { return 1000 * Math.sqrt(Math.max(0, kiloSquared)); }
    all.front = root(all.leftFl) + root(all.leftFr);
    all.rear = root(all.leftRl) + root(all.leftRr);
    all.frontLocked = Math.min(all.leftFl, all.leftFr) < 0;
    all.rearLocked = Math.min(all.leftRl, all.leftRr) < 0;
    all.frontUse = Math.hypot(all.frontAlong, all.frontAcross);
    all.rearUse = Math.hypot(all.rearAlong, all.rearAcross);
    return all;
  }

  function best(part) {
    var steps = Math.round(hardest / STEP), values = [], top = 0;
    for (var i = 0; i <= steps; i++) {
      values[i] = at(part, hardest * i / steps).front;
      if (values[i] > values[top]) { top = i; }
    }
    if (top === 0 || top === steps) { return hardest * top / steps; }
    var below = values[top] - values[top - 1], above = values[top] - values[top + 1];
    return hardest * (top + (below - above) / (2 * (below + above))) / steps;
  }

  // The deceleration from which on a wheel of an axle locks, the inside one, or the hardest where none does.
  function locking(part, axle) {
    var low = 0, high = hardest;
    if (!at(part, high)[axle + 'Locked']) { return hardest; }
    while (high - low > 0.001) {
      var middle = (low + high) / 2;
      if (at(part, middle)[axle + 'Locked']) { high = middle; } else { low = middle; }
    }
    return high;
  }

  function fixed(value, digits) { return value.toFixed(digits).replace(/^-(0(\.0*)?)$/, '$1'); }

  function said(slider) {
    return fixed(slider.value * slider.dataset.times, Number(slider.dataset.digits)) + '\u00a0' + slider.dataset.unit;
  }

  // Drawing: elements as text; nothing in them but numbers and words of this file.
  function text(x, y, words, more) { return '<text x="' + fixed(x, 1) + '" y="' + fixed(y, 1) + '" ' + (more || '') + '>' + words + '</text>'; }

  function drawCapacity(part, now, dNow, dBest, top) {
    var left = 52, right = 466, low = 282, high = 16;
    function x(d) { return left + (right - left) * d / hardest; }
    function y(n) { return low - (low - high) * Math.min(n, top) / top; }
    var out = '', i;
    for (i = 0; i <= hardest; i++) {
      out += '<line class="grid" x1="' + x(i) + '" y1="' + high + '" x2="' + x(i) + '" y2="' + low + '"/>' + text(x(i), low + 18, i, 'text-anchor="middle"');
    }
    for (i = 0; i <= top; i += 2000) {
      out += '<line class="grid" x1="' + left + '" y1="' + y(i) + '" x2="' + right + '" y2="' + y(i) + '"/>' + text(left - 7, y(i) + 4, i / 1000, 'text-anchor="end"');
    }
    out += '<path class="axis" d="M' + left + ' ' + high + 'V' + low + 'H' + right + '"/>';
    out += text((left + right) / 2, low + 40, 'deceleration, m/s²', 'text-anchor="middle"');
    out += text(-(low + high) / 2, 16, 'lateral capacity, kN', 'text-anchor="middle" transform="rotate(-90)"');
    ['rear', 'front'].forEach(function (axle) {
      var line = '';
      for (i = 0; i <= 180; i++) {
        var d = hardest * i / 180;
        line += (i ? 'L' : 'M') + fixed(x(d), 1) + ' ' + fixed(y(at(part, d)[axle]), 1);
      }
      out += '<path class="line ' + axle + '" d="' + line + '"/>';
      var locks = locking(part, axle);
      if (locks < hardest) {
        // The lines fall: above the front one there is room to the right, below the rear one to the left.
        var front = axle === 'front', kink = y(at(part, locks)[axle]), end = front ? kink - 66 : Math.min(kink + 26, low - 36);
        out += '<line class="kink" x1="' + fixed(x(locks), 1) + '" y1="' + fixed(kink, 1) + '" x2="' + fixed(x(locks), 1) + '" y2="' + fixed(end, 1) + '"/>';
        out += text(front ? right : x(locks) + 4, end + (front ? -5 : 13), 'inside ' + axle + ' wheel locks', 'class="' + axle + '" text-anchor="end"');
      }
    });
    var start = at(part, 0);
    out += text(left + 8, y(start.front) - 9, 'front', 'class="front"') + text(left + 8, y(start.rear) + 20, 'rear', 'class="rear"');
    if (dBest < hardest) {
      out += '<line class="best" x1="' + fixed(x(dBest), 1) + '" y1="' + low + '" x2="' + fixed(x(dBest), 1) + '" y2="' + fixed(y(at(part, dBest).front), 1) + '"/>';
      out += text(x(dBest) + 6, low - 8, 'd* = ' + fixed(dBest, 2), 'class="strong"');
    }
    out += '<circle class="mark front" cx="' + fixed(x(dNow), 1) + '" cy="' + fixed(y(now.front), 1) + '" r="7"/>';
    out += '<rect class="mark rear" x="' + fixed(x(dNow) - 6, 1) + '" y="' + fixed(y(now.rear) - 6, 1) + '" width="12" height="12"/>';
    document.getElementById('capacity').innerHTML = out;
  }

  function drawLoads(now, none) {
    var middle = 240, half = 78, ends = { f: 88, r: 240 }, out = '';
    function radius(load) { return 0.72 * Math.sqrt(Math.max(0, load)); }
    out += '<rect class="body" x="' + (middle - half) + '" y="40" width="' + 2 * half + '" height="252" rx="34"/>';
    out += '<path class="body" d="M' + middle + ' 172V146M' + (middle - 6) + ' 155L' + middle + ' 144L' + (middle + 6) + ' 155"/>' + text(middle, 189, 'ahead', 'text-anchor="middle"');
    [['Fl', -1, 'f', 'front left'], ['Fr', 1, 'f', 'front right'], ['Rl', -1, 'r', 'rear left'], ['Rr', 1, 'r', 'rear right']].forEach(function (wheel) {
      var x = middle + wheel[1] * half, y = ends[wheel[2]], load = now['load' + wheel[0]];
      out += '<circle class="disc' + (wheel[2] === 'r' ? ' rear' : '') + '" cx="' + x + '" cy="' + y + '" r="' + fixed(radius(load), 1) + '"/>';
      out += '<circle class="without" cx="' + x + '" cy="' + y + '" r="' + fixed(radius(none['load' + wheel[0]]), 1) + '"/>';
      var label = middle + wheel[1] * 150;
      out += text(label, y - 10, wheel[3], 'text-anchor="' + (wheel[1] < 0 ? 'end' : 'start') + '"');
      out += text(label, y + 8, fixed(load, 0) + ' N', 'class="strong" text-anchor="' + (wheel[1] < 0 ? 'end' : 'start') + '"');
      var more = load - none['load' + wheel[0]];
      out += text(label, y + 26, (more < -0.5 ? '\u2212' : '+') + fixed(Math.abs(more), 0) + ' N', 'text-anchor="' + (wheel[1] < 0 ? 'end' : 'start') + '"');
    });
    document.getElementById('loads').innerHTML = out;
  }

  function drawCircle(part, now, dNow) {
    var cx = 250, cy = 180, r = 118, most = 1.45, ends = {}, out = '';
    function place(along, across) {
      var length = Math.hypot(along, across), shown = Math.min(length, most) / (length || 1);
      return [cx - r * across * shown, cy + r * along * shown];
    }
    out += '<path class="grid" d="M' + (cx - 1.5 * r) + ' ' + cy + 'H' + (cx + 1.15 * r) + 'M' + cx + ' ' + (cy - 1.15 * r) + 'V' + (cy + 1.5 * r) + '"/>';
    out += '<circle class="half" cx="' + cx + '" cy="' + cy + '" r="' + r / 2 + '"/><circle class="ring" cx="' + cx + '" cy="' + cy + '" r="' + r + '"/>';
    out += text(cx + r / 2 * 0.72 + 4, cy - r / 2 * 0.72 - 3, '50 %') + text(cx + r * 0.72 + 4, cy - r * 0.72 - 3, '100 %');
    out += text(cx + 8, cy + 1.5 * r + 14, 'braking') + text(cx - 1.08 * r, cy - 8, 'cornering', 'text-anchor="end"');
    ['rear', 'front'].forEach(function (axle) {
      var line = '';
      for (var i = 0; i <= 60; i++) {
        var point = at(part, dNow * i / 60);
        if (point[axle + 'Locked']) { break; }
        var xy = ends[axle] = place(point[axle + 'Along'], point[axle + 'Across']);
        line += (i ? 'L' : 'M') + fixed(xy[0], 1) + ' ' + fixed(xy[1], 1);
      }
      out += '<path class="line ' + axle + '" d="' + line + '"/>';
    });
    // Where a wheel locks, the way ends, and the mark is hollow.
    function words(axle) { return axle + (now[axle + 'Locked'] ? ': locked' : ' ' + fixed(100 * now[axle + 'Use'], 0) + ' %'); }
    function look(axle) { return 'class="mark ' + axle + (now[axle + 'Locked'] ? ' hollow' : '') + '"'; }
    var f = ends.front, b = ends.rear;
    out += '<rect ' + look('rear') + ' x="' + fixed(b[0] - 6, 1) + '" y="' + fixed(b[1] - 6, 1) + '" width="12" height="12"/>';
    out += '<circle ' + look('front') + ' cx="' + fixed(f[0], 1) + '" cy="' + fixed(f[1], 1) + '" r="7"/>';
    out += '<circle ' + look('front') + ' cx="362" cy="30" r="7"/>' + text(376, 35, words('front'), 'class="front"');
    out += '<rect ' + look('rear') + ' x="356" y="48" width="12" height="12"/>' + text(376, 59, words('rear'), 'class="rear"');
    document.getElementById('circle').innerHTML = out;
  }

  function verdict(name, now, none, locked, use) {
    if (locked) { return name + ': a wheel locks and no longer corners. The other one can give ' + fixed(now, 0) + ' N sideways.'; }
    var change = 100 * (now / none - 1);
    var words = name + ': can give ' + fixed(now, 0) + ' N sideways, ' + fixed(Math.abs(change), 1) + ' % ' + (change < 0 ? 'less' : 'more') + ' than without the brake. It uses ' + fixed(100 * use, 0) + '\u00a0% of its grip';
    return words + (use > 1 ? ', more than it has: it slides.' : '.');
  }

  function put(row, values) {
    var cells = document.querySelectorAll('[data-row="' + row + '"] td');
    values.forEach(function (value, i) { cells[i].textContent = value; });
  }

  function show() {
    var v = sliders.map(function (slider) { return Number(slider.value); });
    var part = slice(v[1], v[2], v[3]);
    var none = at(part, 0), now = at(part, v[0]), d = best(part), top = at(part, d);
    sliders.forEach(function (slider) {
      var words = said(slider);
      document.getElementById(slider.id + '-said').textContent = words;
      slider.setAttribute('aria-valuetext', words);
    });
    document.getElementById('setting').textContent = 'Braking with ' + said(sliders[0]) + ', ' + said(sliders[1]) + ' of it in front, CG at ' + said(sliders[2]) + ', ' + said(sliders[3]) + ' of dry grip.';
    document.getElementById('front').textContent = verdict('Front', now.front, none.front, now.frontLocked, now.frontUse);
    document.getElementById('rear').textContent = verdict('Rear', now.rear, none.rear, now.rearLocked, now.rearUse);
    var three = [none, now, top];
    put('best', ['0.00', fixed(v[0], 2), d < hardest ? fixed(d, 2) : 'over ' + hardest]);
    put('front', three.map(function (x) { return fixed(x.front, 0); }));
    put('rear', three.map(function (x) { return fixed(x.rear, 0); }));
    put('frontUse', three.map(function (x) { return x.frontLocked ? 'locked' : fixed(100 * x.frontUse, 0); }));
    put('rearUse', three.map(function (x) { return x.rearLocked ? 'locked' : fixed(100 * x.rearUse, 0); }));
    ['Fl', 'Fr', 'Rl', 'Rr'].forEach(function (wheel) { put('load' + wheel, three.map(function (x) { return fixed(x['load' + wheel], 0); })); });
    drawCapacity(part, now, v[0], d, 14000);
    drawLoads(now, none);
    drawCircle(part, now, v[0]);
  }

  function stop() {
    clearInterval(timer);
    timer = null;
    document.getElementById('play').textContent = 'Brake from 0 to ' + hardest + ' m/s²';
  }

  sliders.forEach(function (slider) {
    slider.addEventListener('input', function () { stop(); show(); });
  });
  document.getElementById('controls').addEventListener('submit', function (event) { event.preventDefault(); });
  document.getElementById('play').addEventListener('click', function () {
    if (timer) { stop(); return; }
    sliders[0].value = 0;
    show();
    this.textContent = 'Stop';
    timer = setInterval(function () {
      sliders[0].value = Number(sliders[0].value) + 0.1;
      show();
      if (Number(sliders[0].value) >= hardest) { stop(); }
    }, 60);
  });
  document.getElementById('back').addEventListener('click', function () {
    stop();
    sliders.forEach(function (slider) { slider.value = slider.dataset.start; });
    show();
  });
  document.querySelectorAll('[data-set]').forEach(function (button) {
    button.addEventListener('click', function () {
      stop();
      var wanted = button.dataset.set.split(' ').map(Number);
      sliders.forEach(function (slider, i) { slider.value = wanted[i]; });
      show();
    });
  });
  // Nothing moves by itself where the reader wants no motion.
  function motion() { document.getElementById('play').hidden = still.matches; if (still.matches) { stop(); } }
  still.addEventListener('change', motion);
  motion();
  document.getElementById('controls').hidden = false;
  document.getElementById('charts').hidden = false;
  show();
})();
