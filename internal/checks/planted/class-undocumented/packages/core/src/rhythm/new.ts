class Shelf {}
export { Shelf };
