// Shows the release that both sliders point at, and hides the others.
(function () {
  'use strict';
  var slider = document.getElementById('slider');
  var peak = document.getElementById('peak');
  var peaks = document.querySelectorAll('[data-peak]');
  var said = document.getElementById('said');
  var blocks = document.querySelectorAll('[data-release]');
  var rows = document.querySelectorAll('[data-row]');

  function show() {
    var chosen = String(Number(peak.value) * Number(slider.dataset.rungs) + Number(slider.value));
    peaks.forEach(function (group) {
      group.hidden = group.dataset.peak !== peak.value;
    });
    blocks.forEach(function (block) {
      block.hidden = block.dataset.release !== chosen;
    });
    rows.forEach(function (row) {
      if (row.dataset.row === chosen) {
        row.setAttribute('aria-current', 'true');
        said.textContent = row.dataset.said;
        slider.setAttribute('aria-valuetext', row.dataset.said);
        peak.setAttribute('aria-valuetext', row.dataset.said);
      } else {
        row.removeAttribute('aria-current');
      }
    });
  }

  document.getElementById('back').addEventListener('click', function () {
    slider.value = slider.dataset.planned;
    peak.value = peak.dataset.planned;
    show();
  });
  slider.addEventListener('input', show);
  peak.addEventListener('input', show);
  document.getElementById('controls').hidden = false;
  show(); // A browser that comes back to the page may have kept the sliders where they were.
})();
