// The few elements that the scripts of the record and of measuring put on their pages.
export const element = (name, text, kind) => {
  const made = document.createElement(name);
  made.textContent = text;
  made.className = kind || "";
  return made;
};

export const button = (text, act) => {
  const made = element("button", text, "minor");
  made.type = "button";
  made.addEventListener("click", act);
  return made;
};
