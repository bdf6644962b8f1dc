"""Fills cells of a form as a person would, with openpyxl: fill_form.py FORM OUT SHEET!CELL=VALUE ...; a value that starts with = is a formula."""

import sys

import openpyxl

book = openpyxl.load_workbook(sys.argv[1])
for change in sys.argv[3:]:
    place, value = change.split("=", 1)
    sheet, cell = place.split("!")
    try:
        value = float(value)
    except ValueError:
        pass
    book[sheet][cell] = value
for sheet in book:
    for rule in sheet.data_validations.dataValidation:
        # The limits of the format (ISO/IEC 29500-1, 18.3.1.32): a title of 32, a prompt and an error of 255 characters.
        assert len(rule.promptTitle or "") <= 32 and len(rule.prompt or "") <= 255 and len(rule.error or "") <= 255, (sheet.title, rule.sqref)
        assert rule.formula1 is None or len(rule.formula1) <= 255, (sheet.title, rule.formula1)
book.save(sys.argv[2])
print(sum(len(s.data_validations.dataValidation) for s in book))
