// Where a path of this house lies: the same pages are served under more than one address.
export const to = (path) => (document.documentElement.dataset.root ?? "") + path;
