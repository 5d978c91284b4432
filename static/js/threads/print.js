// A sheet on paper: the button prints it.

const button = document.querySelector('[data-act="print"]');
button?.addEventListener("click", () => print());
