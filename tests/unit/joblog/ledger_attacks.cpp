// What is tried on the ledger.
#include "raw_log.hpp"

namespace wetout::joblog::testing {
namespace {

#define ENTRY_COLUMNS "token, kind, at, day, recorded, event, undoes, note"
#define LINE_COLUMNS "source, target, lot, job, step, quantity, minor"

const Attack attacks[] = {
    {"ChangesTheCurrency", "currency_no_update", "UPDATE currency SET code = 'EUR'"},
    {"DeletesTheCurrency", "currency_no_delete", "DELETE FROM currency"},
    {"ReplacesTheCurrency", "currency_no_replace",
     "INSERT OR REPLACE INTO currency VALUES(1, 'EUR')"},

    {"ChangesTheUnitOfAMaterial", "material_no_update",
     "UPDATE material SET unit = 'mg' WHERE id = 3"},
    {"RenumbersAMaterial", "material_no_update",
     "UPDATE OR REPLACE material SET id = 9 WHERE id = 3"},
    {"TakesTheSlugOfAMaterial", "material_no_update",
     "UPDATE OR REPLACE material SET slug = 'slow-a' WHERE id = 3"},
    {"DeletesAMaterial", "material_no_delete", "DELETE FROM material WHERE id = 3"},
    {"ReplacesAMaterial", "material_no_replace",
     "INSERT OR REPLACE INTO material VALUES(3, 'other', 'x', 'mg')"},
    {"ReplacesAMaterialBySlug", "material_no_replace",
     "INSERT OR REPLACE INTO material(slug, name, unit) VALUES('loose', 'x', 'um')"},

    {"ChangesALot", "lot_no_update", "UPDATE lot SET expires = 30000 WHERE id = 1"},
    {"RenumbersALot", "lot_no_update", "UPDATE OR REPLACE lot SET id = 9 WHERE id = 3"},
    {"TakesTheLabelOfALot", "lot_no_update", "UPDATE OR REPLACE lot SET label = 'L2' WHERE id = 3"},
    {"MovesALotToAnotherMaterial", "lot_no_update", "UPDATE lot SET material = 2 WHERE id = 3"},
    {"DeletesALot", "lot_no_delete", "DELETE FROM lot WHERE id = 3"},
    {"ReplacesALot", "lot_no_replace",
     "INSERT OR REPLACE INTO lot(id, material, label, received) VALUES(3, 3, 'other', 5)"},
    {"ReplacesALotByLabel", "lot_no_replace",
     "INSERT OR REPLACE INTO lot(material, label, received) VALUES(3, 'L1', 5)"},

    {"ChangesTheSumOfALot", "lot_sum_no_update", "UPDATE lot_sum SET quantity = quantity + 5"},
    {"LessensTheSumOfALot", "lot_sum_no_update",
     "UPDATE lot_sum SET lines = lines + 1, quantity = 0 WHERE quantity > 0"},
    {"DeletesTheSumOfALot", "lot_sum_no_delete", "DELETE FROM lot_sum WHERE lot = 1"},
    {"ReplacesTheSumOfALot", "lot_sum_no_replace",
     "INSERT OR REPLACE INTO lot_sum VALUES(1, 'supplier', 'stock', 0, 5, 5, 1)"},
    {"AddsASumOfItsOwn", "lot_sum_no_replace",
     "INSERT INTO lot_sum VALUES(1, 'adjustment', 'stock', 1, 5, 5, 1)"},

    {"ChangesAnEntry", "entry_no_update", "UPDATE entry SET recorded = 0 WHERE id = 1"},
    {"RenumbersAnEntry", "entry_no_update", "UPDATE OR REPLACE entry SET id = 9 WHERE id = 6"},
    {"TakesATokenOfAnEntryByUpdate", "entry_no_update",
     "UPDATE OR REPLACE entry SET token = 'r-1' WHERE id = 6"},
    {"DeletesAnEntry", "entry_no_delete", "DELETE FROM entry WHERE id = 6"},
    {"ReplacesAnEntry", "entry_no_replace",
     "INSERT OR REPLACE INTO entry SELECT 6, 'new', kind, at, day, recorded, event, undoes, 'x'"
     " FROM entry WHERE id = 6",
     "entry_is_next"},
    {"ReplacesAnEntryByToken", "entry_no_replace",
     "INSERT OR REPLACE INTO entry SELECT 7, " ENTRY_COLUMNS " FROM entry WHERE id = 6"},
    {"ReplacesAnEntryByWhatItUndoes", "entry_no_replace",
     "INSERT OR REPLACE INTO entry SELECT 7, 'new', kind, at, day, recorded, event, undoes, note"
     " FROM entry WHERE id = 4"},
    {"SkipsAnEntry", "entry_is_next",
     "INSERT INTO entry SELECT 8, 'new', kind, at, day, recorded, event, undoes, note FROM entry"
     " WHERE id = 2"},
    {"LetsTheDatabaseNumberAnEntry", "entry_is_next",
     "INSERT INTO entry SELECT NULL, 'new', kind, at, day, recorded, event, undoes, note FROM entry"
     " WHERE id = 2"},
    {"UndoesAnUndoOfAnEntry", "entry_undoes",
     "INSERT INTO entry SELECT 7, 'new', kind, at, day, recorded, event, 4, note FROM entry"
     " WHERE id = 4"},

    {"ChangesAMovement", "movement_no_update",
     "UPDATE movement SET minor = 1 WHERE entry = 1 AND line = 1"},
    {"RenumbersAMovement", "movement_no_update",
     "UPDATE OR REPLACE movement SET line = 9 WHERE entry = 1 AND line = 1"},
    {"DeletesAMovement", "movement_no_delete", "DELETE FROM movement WHERE entry = 5"},
    {"ReplacesAMovement", "movement_no_replace",
     "INSERT OR REPLACE INTO movement SELECT entry, line, source, target, lot, job, step, 7, minor"
     " FROM movement WHERE entry = 6"},
    {"AddsAMovementAfterwards", "movement_late",
     "INSERT INTO movement SELECT 2, 9, " LINE_COLUMNS " FROM movement WHERE entry = 2 AND line ="
     " 1"},
    {"AddsAMovementOfAnotherKind", "movement_kind",
     "INSERT INTO movement SELECT 6, 2, " LINE_COLUMNS " FROM movement WHERE entry = 5"},
};

// An entry 6, and a line of it without the trigger that would stop most of these first.
#define ENTRY(values) "INSERT INTO entry(id, " ENTRY_COLUMNS ") VALUES(6, " values ")"
#define LINE(values) \
  "DROP TRIGGER movement_kind;" ENTRY("'new', 'use', 5, 0, 6, NULL, NULL, NULL") ";"   \
  "INSERT INTO movement(entry, line, " LINE_COLUMNS ") VALUES(" values ")"

const BadRow bad_rows[] = {
    {"CurrencyTooShort", check,
     "DROP TRIGGER currency_no_replace; DROP TRIGGER currency_no_update;"
     "UPDATE currency SET code = 'US'"},
    {"CurrencySmall", check, "DROP TRIGGER currency_no_update; UPDATE currency SET code = 'usd'"},
    {"CurrencyNull", not_null, "DROP TRIGGER currency_no_update; UPDATE currency SET code = NULL"},
    {"CurrencySecond", check,
     "DROP TRIGGER currency_no_replace; INSERT INTO currency VALUES(2, 'EUR')"},

    {"MaterialIdZero", check, "INSERT INTO material VALUES(0, 'x', 'x', 'mg')"},
    {"MaterialSlugEmpty", check, "INSERT INTO material VALUES(9, '', 'x', 'mg')"},
    {"MaterialSlugWithCapitals", check, "INSERT INTO material VALUES(9, 'Slow', 'x', 'mg')"},
    {"MaterialSlugWithHyphenFirst", check, "INSERT INTO material VALUES(9, '-a', 'x', 'mg')"},
    {"MaterialSlugWithHyphenLast", check, "INSERT INTO material VALUES(9, 'a-', 'x', 'mg')"},
    {"MaterialSlugWithTwoHyphens", check, "INSERT INTO material VALUES(9, 'a--b', 'x', 'mg')"},
    {"MaterialSlugNull", not_null, "INSERT INTO material VALUES(9, NULL, 'x', 'mg')"},
    {"MaterialSlugAgain", trigger, "INSERT INTO material VALUES(9, 'slow-a', 'x', 'mg')"},
    {"MaterialNameEmpty", check, "INSERT INTO material VALUES(9, 'x', '', 'mg')"},
    {"MaterialNameNull", not_null, "INSERT INTO material VALUES(9, 'x', NULL, 'mg')"},
    {"MaterialNameEmptied", check, "UPDATE material SET name = '' WHERE id = 1"},
    {"MaterialUnitUnknown", check, "INSERT INTO material VALUES(9, 'x', 'x', 'kg')"},
    {"MaterialUnitNull", not_null, "INSERT INTO material VALUES(9, 'x', 'x', NULL)"},

    {"LotIdZero", check, "INSERT INTO lot VALUES(0, 1, 'x', NULL, 5, NULL, NULL)"},
    {"LotOfNoMaterial", foreign, "INSERT INTO lot VALUES(9, 9, 'x', NULL, 5, NULL, NULL)"},
    {"LotMaterialNull", not_null, "INSERT INTO lot VALUES(9, NULL, 'x', NULL, 5, NULL, NULL)"},
    {"LotLabelEmpty", check, "INSERT INTO lot VALUES(9, 1, '', NULL, 5, NULL, NULL)"},
    {"LotLabelTooLong", check,
     "INSERT INTO lot VALUES(9, 1, printf('%065d', 1), NULL, 5, NULL, NULL)"},
    {"LotLabelNull", not_null, "INSERT INTO lot VALUES(9, 1, NULL, NULL, 5, NULL, NULL)"},
    {"LotLabelAgain", trigger, "INSERT INTO lot VALUES(9, 1, 'L1', NULL, 5, NULL, NULL)"},
    {"LotBatchEmpty", check, "INSERT INTO lot VALUES(9, 1, 'x', '', 5, NULL, NULL)"},
    {"LotReceivedNull", not_null, "INSERT INTO lot VALUES(9, 1, 'x', NULL, NULL, NULL, NULL)"},
    {"LotReceivedText", datatype, "INSERT INTO lot VALUES(9, 1, 'x', NULL, 'now', NULL, NULL)"},
    {"LotExpiresText", datatype, "INSERT INTO lot VALUES(9, 1, 'x', NULL, 5, 'soon', NULL)"},
    {"LotWidthZero", check, "INSERT INTO lot VALUES(9, 1, 'x', NULL, 5, NULL, 0)"},

    {"EntryTokenOfNothing", check, ENTRY("'', 'use', 5, 0, 6, NULL, NULL, NULL")},
    {"EntryTokenMissing", not_null, ENTRY("NULL, 'use', 5, 0, 6, NULL, NULL, NULL")},
    {"EntryTokenTwice", trigger, ENTRY("'r-1', 'use', 5, 0, 6, NULL, NULL, NULL")},
    {"EntryKindUnknown", check, ENTRY("'new', 'sell', 5, 0, 6, NULL, NULL, NULL")},
    {"EntryKindNull", not_null, ENTRY("'new', NULL, 5, 0, 6, NULL, NULL, NULL")},
    {"EntryAtNull", not_null, ENTRY("'new', 'use', NULL, 0, 6, NULL, NULL, NULL")},
    {"EntryAtText", datatype, ENTRY("'new', 'use', 'noon', 0, 6, NULL, NULL, NULL")},
    {"EntryDayNull", not_null, ENTRY("'new', 'use', 5, NULL, 6, NULL, NULL, NULL")},
    {"EntryDayLater", check, ENTRY("'new', 'use', 5, 2, 6, NULL, NULL, NULL")},
    {"EntryDayEarlier", check, ENTRY("'new', 'use', 5, -3, 6, NULL, NULL, NULL")},
    {"EntryRecordedNull", not_null, ENTRY("'new', 'use', 5, 0, NULL, NULL, NULL, NULL")},
    {"EntryOfNoEvent", foreign, ENTRY("'new', 'use', 5, 0, 6, 99, NULL, NULL")},
    {"EntryUndoOfNothing", check, ENTRY("'new', 'undo', 5, 0, 6, NULL, NULL, NULL")},
    {"EntryUseThatUndoes", check, ENTRY("'new', 'use', 5, 0, 6, NULL, 1, NULL")},
    {"EntryUndoOfItself", check, ENTRY("'new', 'undo', 5, 0, 6, NULL, 6, NULL")},
    {"EntryUndoOfALaterOne", check, ENTRY("'new', 'undo', 5, 0, 6, NULL, 7, NULL")},
    {"EntryUndoOfNone", foreign, ENTRY("'new', 'undo', 5, 0, 6, NULL, 0, NULL")},
    {"EntryUndoneTwice", trigger, ENTRY("'new', 'undo', 5, 0, 6, NULL, 3, NULL")},
    {"EntryNoteEmpty", check, ENTRY("'new', 'use', 5, 0, 6, NULL, NULL, ''")},

    {"LineOfNoEntry", trigger, LINE("7, 1, 'stock', 'board', 1, 1, 'x', 5, 1")},
    {"LineEntryNull", not_null, LINE("NULL, 1, 'stock', 'board', 1, 1, 'x', 5, 1")},
    {"LineZero", check, LINE("6, 0, 'stock', 'board', 1, 1, 'x', 5, 1")},
    {"LineNull", not_null, LINE("6, NULL, 'stock', 'board', 1, 1, 'x', 5, 1")},
    {"LineSourceUnknown", check, LINE("6, 1, 'shelf', 'stock', 1, NULL, NULL, 5, 1")},
    {"LineSourceNull", not_null, LINE("6, 1, NULL, 'stock', 1, NULL, NULL, 5, 1")},
    {"LineTargetUnknown", check, LINE("6, 1, 'stock', 'bin', 1, NULL, NULL, 5, 1")},
    {"LineTargetNull", not_null, LINE("6, 1, 'stock', NULL, 1, NULL, NULL, 5, 1")},
    {"LineToItself", check, LINE("6, 1, 'stock', 'stock', 1, NULL, NULL, 5, 1")},
    {"LinePastStock", check, LINE("6, 1, 'supplier', 'waste', 1, NULL, NULL, 5, 1")},
    {"LinePastStockIntoABoard", check, LINE("6, 1, 'supplier', 'board', 1, 1, NULL, 5, 1")},
    {"LineOfWorkIntoStock", check, LINE("6, 1, 'labour', 'stock', NULL, NULL, NULL, 5, 1")},
    {"LineOfWorkIntoWaste", check, LINE("6, 1, 'labour', 'waste', NULL, NULL, NULL, 5, 1")},
    {"LineOfWorkWithALot", check, LINE("6, 1, 'labour', 'board', 1, 1, NULL, 5, 1")},
    {"LineOfGoodsWithoutALot", check, LINE("6, 1, 'stock', 'board', NULL, 1, NULL, 5, 1")},
    {"LineOfNoLot", foreign, LINE("6, 1, 'stock', 'board', 9, 1, NULL, 5, 1")},
    {"LineIntoABoardWithoutAJob", check, LINE("6, 1, 'stock', 'board', 1, NULL, NULL, 5, 1")},
    {"LineIntoWasteWithAJob", check, LINE("6, 1, 'stock', 'waste', 1, 1, NULL, 5, 1")},
    {"LineOfNoJob", foreign, LINE("6, 1, 'stock', 'board', 1, 99, NULL, 5, 1")},
    {"LineStepEmpty", check, LINE("6, 1, 'stock', 'board', 1, 1, '', 5, 1")},
    {"LineStepWithoutAJob", check, LINE("6, 1, 'stock', 'waste', 1, NULL, 'x', 5, 1")},
    {"LineQuantityNegative", check, LINE("6, 1, 'stock', 'board', 1, 1, NULL, -5, 1")},
    {"LineQuantityTooLarge", check, LINE("6, 1, 'stock', 'board', 1, 1, NULL, 1000000000001, 1")},
    {"LineQuantityNull", not_null, LINE("6, 1, 'stock', 'board', 1, 1, NULL, NULL, 1")},
    {"LineQuantityReal", datatype, LINE("6, 1, 'stock', 'board', 1, 1, NULL, 5.5, 1")},
    {"LineMinorNegative", check, LINE("6, 1, 'stock', 'board', 1, 1, NULL, 5, -1")},
    {"LineMinorTooLarge", check, LINE("6, 1, 'stock', 'board', 1, 1, NULL, 5, 1000000000001")},
    {"LineMinorNull", not_null, LINE("6, 1, 'stock', 'board', 1, 1, NULL, 5, NULL")},
    {"LineMinorText", datatype, LINE("6, 1, 'stock', 'board', 1, 1, NULL, 5, 'much'")},
    {"SumOfNoLot", foreign, "INSERT INTO lot_sum VALUES(9, 'waste', 'stock', 0, 0, 0, 1)"},
    {"SumLotNull", not_null, "INSERT INTO lot_sum VALUES(NULL, 'waste', 'stock', 0, 0, 0, 1)"},
    {"SumSourceNull", not_null, "INSERT INTO lot_sum VALUES(1, NULL, 'stock', 0, 0, 0, 1)"},
    {"SumTargetNull", not_null, "INSERT INTO lot_sum VALUES(1, 'waste', NULL, 0, 0, 0, 1)"},
    {"SumQuantityNegative", check, "INSERT INTO lot_sum VALUES(1, 'waste', 'stock', 0, -1, 0, 1)"},
    {"SumQuantityNull", not_null, "INSERT INTO lot_sum VALUES(1, 'waste', 'stock', 0, NULL, 0, 1)"},
    {"SumMinorNegative", check, "INSERT INTO lot_sum VALUES(1, 'waste', 'stock', 0, 0, -1, 1)"},
    {"SumMinorNull", not_null, "INSERT INTO lot_sum VALUES(1, 'waste', 'stock', 0, 0, NULL, 1)"},
    {"SumFirstNull", not_null, "INSERT INTO lot_sum VALUES(1, 'waste', 'stock', 0, 0, 0, NULL)"},
    {"SumOfNoEntry", foreign, "INSERT INTO lot_sum VALUES(1, 'waste', 'stock', 0, 0, 0, 99)"},
    {"LineOfNothing", check, LINE("6, 1, 'stock', 'board', 1, 1, NULL, 0, 0")},
};

}  // namespace

std::span<const Attack> attacks_on_ledger() { return attacks; }
std::span<const BadRow> bad_rows_of_ledger() { return bad_rows; }

}  // namespace wetout::joblog::testing
