CREATE INDEX evidence_by_run ON evidence (run);
CREATE INDEX ledger_by_bottle ON ledger (bottle);
CREATE INDEX ledger_by_run ON ledger (run);
CREATE INDEX step_strips_by_combination ON step_strips (combination);
CREATE TABLE answers (
	command TEXT NOT NULL,
	run TEXT NOT NULL,
	from_seq INTEGER,
	to_seq INTEGER,
	answer TEXT NOT NULL,
	CONSTRAINT answers_key PRIMARY KEY (command),
	CONSTRAINT answers_answer_json CHECK (json_valid(answer)),
	CONSTRAINT answers_seqs_together CHECK ((from_seq IS NULL) = (to_seq IS NULL))
)
 STRICT;
CREATE TABLE batches (
	"key" TEXT NOT NULL,
	kind TEXT NOT NULL,
	name TEXT NOT NULL,
	strength TEXT NOT NULL,
	parts TEXT NOT NULL,
	made INTEGER NOT NULL,
	made_ml REAL NOT NULL,
	reusable INTEGER NOT NULL,
	keeps_full_months INTEGER,
	keeps_part_months INTEGER,
	price_minor INTEGER,
	CONSTRAINT batches_key PRIMARY KEY ("key"),
	CONSTRAINT batches_kind_known CHECK (kind IN ('developer', 'stop bath', 'fixer', 'washing aid', 'wetting agent', 'water')),
	CONSTRAINT batches_strength_known CHECK (strength IN ('concentrate', 'stock', 'working')),
	CONSTRAINT batches_reusable_yes_or_no CHECK (reusable IN (0, 1)),
	CONSTRAINT batches_made_ml_not_negative CHECK (made_ml >= 0),
	CONSTRAINT batches_price_not_negative CHECK (price_minor >= 0)
)
 STRICT;
CREATE TABLE bottles (
	"key" TEXT NOT NULL,
	code TEXT NOT NULL,
	batch TEXT NOT NULL,
	holds_ml REAL NOT NULL,
	cap TEXT NOT NULL,
	place TEXT NOT NULL,
	opened INTEGER,
	rolls_per_l REAL,
	CONSTRAINT bottles_key PRIMARY KEY ("key"),
	CONSTRAINT bottles_code_once UNIQUE (code),
	CONSTRAINT bottles_holds_ml_positive CHECK (holds_ml > 0),
	CONSTRAINT bottles_code_known FOREIGN KEY(code) REFERENCES codes (code),
	CONSTRAINT bottles_batch_known FOREIGN KEY(batch) REFERENCES batches ("key")
)
 STRICT;
CREATE TABLE codes (
	code TEXT NOT NULL,
	noun TEXT NOT NULL,
	CONSTRAINT codes_key PRIMARY KEY (code),
	CONSTRAINT codes_noun_known CHECK (noun IN ('roll', 'bottle', 'tank', 'sleeve'))
)
 STRICT;
CREATE TABLE combinations (
	"key" TEXT NOT NULL,
	film TEXT NOT NULL,
	developer TEXT NOT NULL,
	stock_parts INTEGER NOT NULL,
	water_parts INTEGER NOT NULL,
	agitation TEXT NOT NULL,
	tank TEXT NOT NULL,
	convention TEXT NOT NULL,
	time_rule TEXT NOT NULL,
	least_stock_ml REAL,
	hydroquinone INTEGER,
	CONSTRAINT combinations_key PRIMARY KEY ("key"),
	CONSTRAINT combinations_once UNIQUE (film, developer, stock_parts, water_parts, agitation, tank, convention),
	CONSTRAINT combinations_tank_known CHECK (tank IN ('plastic', 'steel')),
	CONSTRAINT combinations_convention_known CHECK (convention IN ('pour-in to pour-out', 'filled to pour-out')),
	CONSTRAINT combinations_time_rule_known CHECK (time_rule IN ('rate', 'table only', 'completion')),
	CONSTRAINT combinations_hydroquinone_yes_or_no CHECK (hydroquinone IN (0, 1)),
	CONSTRAINT combinations_parts_in_range CHECK (stock_parts >= 1 AND water_parts >= 0)
)
 STRICT;
CREATE TABLE evidence (
	"key" TEXT NOT NULL,
	run TEXT NOT NULL,
	tankful TEXT NOT NULL,
	said TEXT NOT NULL,
	noted INTEGER NOT NULL,
	body TEXT NOT NULL,
	CONSTRAINT evidence_key PRIMARY KEY ("key"),
	CONSTRAINT evidence_said_known CHECK (said IN ('answers', 'densities', 'strips', 'not asked')),
	CONSTRAINT evidence_body_json CHECK (json_valid(body))
)
 STRICT;
CREATE TABLE films (
	name TEXT NOT NULL,
	grain TEXT NOT NULL,
	CONSTRAINT films_key PRIMARY KEY (name),
	CONSTRAINT films_grain_known CHECK (grain IN ('cubic', 'tabular', 'unknown'))
)
 STRICT;
CREATE TABLE ledger (
	"key" TEXT NOT NULL,
	bottle TEXT NOT NULL,
	kind TEXT NOT NULL,
	ml REAL NOT NULL,
	area_units REAL NOT NULL,
	counted_units REAL NOT NULL,
	because TEXT NOT NULL,
	words TEXT NOT NULL,
	reverses TEXT,
	test TEXT,
	run TEXT,
	event TEXT NOT NULL,
	line INTEGER NOT NULL,
	place INTEGER NOT NULL,
	recorded INTEGER NOT NULL,
	CONSTRAINT ledger_key PRIMARY KEY ("key"),
	CONSTRAINT ledger_event_line_once UNIQUE (event, line),
	CONSTRAINT ledger_reverses_once UNIQUE (reverses),
	CONSTRAINT ledger_kind_known CHECK (kind IN ('mixed', 'decanted', 'drawn', 'returned', 'charged', 'topped up', 'filtered', 'tested', 'contaminated', 'discarded')),
	CONSTRAINT ledger_test_of_a_tested_line CHECK (test IS NULL OR (kind = 'tested' AND json_valid(test))),
	CONSTRAINT ledger_reverses_known FOREIGN KEY(reverses) REFERENCES ledger ("key")
)
 STRICT;
CREATE TABLE photographs (
	sha256 TEXT NOT NULL,
	noun TEXT NOT NULL,
	about TEXT NOT NULL,
	media TEXT NOT NULL,
	size_bytes INTEGER NOT NULL,
	kept INTEGER NOT NULL,
	words TEXT NOT NULL,
	CONSTRAINT photographs_key PRIMARY KEY (sha256, noun, about),
	CONSTRAINT photographs_media_known CHECK (media IN ('image/jpeg', 'image/png', 'image/heic')),
	CONSTRAINT photographs_sha256_whole CHECK (length(sha256) = 64),
	CONSTRAINT photographs_size_in_range CHECK (size_bytes BETWEEN 1 AND 15728640)
)
 STRICT;
CREATE TABLE places (
	"key" TEXT NOT NULL,
	name TEXT NOT NULL,
	room_c REAL NOT NULL,
	hot_c REAL,
	cold_c REAL,
	jug_worth_ml REAL NOT NULL,
	zone TEXT NOT NULL,
	CONSTRAINT places_key PRIMARY KEY ("key")
)
 STRICT;
CREATE TABLE plans (
	"key" TEXT NOT NULL,
	number INTEGER NOT NULL,
	made INTEGER NOT NULL,
	body TEXT NOT NULL,
	CONSTRAINT plans_key PRIMARY KEY ("key", number),
	CONSTRAINT plans_body_json CHECK (json_valid(body))
)
 STRICT;
CREATE TABLE preferences (
	name TEXT NOT NULL,
	value TEXT NOT NULL,
	CONSTRAINT preferences_key PRIMARY KEY (name)
)
 STRICT;
CREATE TABLE proposals (
	"key" TEXT NOT NULL,
	made INTEGER NOT NULL,
	run TEXT,
	combination TEXT,
	old_row TEXT,
	body TEXT NOT NULL,
	standing TEXT NOT NULL,
	decided INTEGER,
	tankful TEXT,
	CONSTRAINT proposals_key PRIMARY KEY ("key"),
	CONSTRAINT proposals_body_json CHECK (json_valid(body)),
	CONSTRAINT proposals_standing_known CHECK (standing IN ('offered', 'accepted', 'declined')),
	CONSTRAINT proposals_decided_when_answered CHECK ((standing = 'offered') = (decided IS NULL)),
	CONSTRAINT proposals_combination_known FOREIGN KEY(combination) REFERENCES combinations ("key"),
	CONSTRAINT proposals_old_row_known FOREIGN KEY(old_row) REFERENCES time_rows ("key")
)
 STRICT;
CREATE TABLE rolls (
	"key" TEXT NOT NULL,
	code TEXT NOT NULL,
	film TEXT NOT NULL,
	format TEXT NOT NULL,
	length_m REAL,
	sheets INTEGER NOT NULL,
	exposure_index REAL NOT NULL,
	camera TEXT NOT NULL,
	owner TEXT NOT NULL,
	precious INTEGER NOT NULL,
	piece_of TEXT,
	exposed TEXT,
	notes TEXT NOT NULL,
	standing TEXT NOT NULL,
	added INTEGER NOT NULL,
	CONSTRAINT rolls_key PRIMARY KEY ("key"),
	CONSTRAINT rolls_code_once UNIQUE (code),
	CONSTRAINT rolls_format_known CHECK (format IN ('135-36', '135-24', '135-length', '120', '4x5')),
	CONSTRAINT rolls_standing_known CHECK (standing IN ('waiting', 'in the tank', 'done', 'lost')),
	CONSTRAINT rolls_precious_yes_or_no CHECK (precious IN (0, 1)),
	CONSTRAINT rolls_exposure_index_positive CHECK (exposure_index > 0),
	CONSTRAINT rolls_sheets_in_range CHECK (sheets BETWEEN 1 AND 12),
	CONSTRAINT rolls_code_known FOREIGN KEY(code) REFERENCES codes (code),
	CONSTRAINT rolls_film_known FOREIGN KEY(film) REFERENCES films (name),
	CONSTRAINT rolls_piece_of_known FOREIGN KEY(piece_of) REFERENCES rolls ("key")
)
 STRICT;
CREATE TABLE run_log (
	run TEXT NOT NULL,
	seq INTEGER NOT NULL,
	event TEXT NOT NULL,
	kind TEXT NOT NULL,
	version INTEGER NOT NULL,
	tankful TEXT,
	happened_wall_us INTEGER NOT NULL,
	happened_elapsed_us INTEGER NOT NULL,
	happened_boot TEXT NOT NULL,
	recorded_wall_us INTEGER NOT NULL,
	recorded_elapsed_us INTEGER NOT NULL,
	recorded_boot TEXT NOT NULL,
	device TEXT NOT NULL,
	how TEXT NOT NULL,
	within_s REAL NOT NULL,
	body TEXT NOT NULL,
	CONSTRAINT run_log_key PRIMARY KEY (run, seq),
	CONSTRAINT run_log_event_once UNIQUE (event),
	CONSTRAINT run_log_seq_from_one CHECK (seq >= 1),
	CONSTRAINT run_log_body_json CHECK (json_valid(body))
)
 STRICT;
CREATE TABLE samples (
	run TEXT NOT NULL,
	probe TEXT NOT NULL,
	wall_us INTEGER NOT NULL,
	temp_c REAL NOT NULL,
	CONSTRAINT samples_key PRIMARY KEY (run, probe, wall_us)
)
 STRICT;
CREATE TABLE step_strips (
	"key" TEXT NOT NULL,
	combination TEXT NOT NULL,
	run TEXT,
	tankful TEXT,
	noted INTEGER NOT NULL,
	replaces TEXT,
	body TEXT NOT NULL,
	CONSTRAINT step_strips_key PRIMARY KEY ("key"),
	CONSTRAINT step_strips_replaces_once UNIQUE (replaces),
	CONSTRAINT step_strips_run_with_tankful CHECK ((run IS NULL) = (tankful IS NULL)),
	CONSTRAINT step_strips_body_json CHECK (json_valid(body)),
	CONSTRAINT step_strips_combination_known FOREIGN KEY(combination) REFERENCES combinations ("key"),
	CONSTRAINT step_strips_replaces_known FOREIGN KEY(replaces) REFERENCES step_strips ("key")
)
 STRICT;
CREATE TABLE tablets (
	"key" TEXT NOT NULL,
	name TEXT NOT NULL,
	body TEXT NOT NULL,
	CONSTRAINT tablets_key PRIMARY KEY ("key"),
	CONSTRAINT tablets_body_json CHECK (json_valid(body))
)
 STRICT;
CREATE TABLE tanks (
	"key" TEXT NOT NULL,
	name TEXT NOT NULL,
	volume_ml REAL NOT NULL,
	worth_ml REAL NOT NULL,
	tau_min REAL NOT NULL,
	kind TEXT NOT NULL,
	CONSTRAINT tanks_key PRIMARY KEY ("key"),
	CONSTRAINT tanks_kind_known CHECK (kind IN ('plastic', 'steel')),
	CONSTRAINT tanks_volume_positive CHECK (volume_ml > 0)
)
 STRICT;
CREATE TABLE thermometers (
	"key" TEXT NOT NULL,
	name TEXT NOT NULL,
	offset_c REAL NOT NULL,
	step_c REAL NOT NULL,
	CONSTRAINT thermometers_key PRIMARY KEY ("key"),
	CONSTRAINT thermometers_step_positive CHECK (step_c > 0)
)
 STRICT;
CREATE TABLE time_rows (
	"key" TEXT NOT NULL,
	combination TEXT NOT NULL,
	time_s REAL NOT NULL,
	temp_c REAL NOT NULL,
	exposure_index REAL NOT NULL,
	source TEXT NOT NULL,
	words TEXT NOT NULL,
	noted TEXT NOT NULL,
	contrast REAL,
	replaces TEXT,
	CONSTRAINT time_rows_key PRIMARY KEY ("key"),
	CONSTRAINT time_rows_source_known CHECK (source IN ('leaflet', 'own', 'accepted')),
	CONSTRAINT time_rows_time_positive CHECK (time_s > 0),
	CONSTRAINT time_rows_combination_known FOREIGN KEY(combination) REFERENCES combinations ("key"),
	CONSTRAINT time_rows_replaces_known FOREIGN KEY(replaces) REFERENCES time_rows ("key")
)
 STRICT;
CREATE TRIGGER ledger_no_delete BEFORE DELETE ON ledger BEGIN SELECT RAISE(ABORT, 'ledger is append-only'); END;
CREATE TRIGGER ledger_no_update BEFORE UPDATE ON ledger BEGIN SELECT RAISE(ABORT, 'ledger is append-only'); END;
CREATE TRIGGER run_log_no_delete BEFORE DELETE ON run_log BEGIN SELECT RAISE(ABORT, 'run_log is append-only'); END;
CREATE TRIGGER run_log_no_update BEFORE UPDATE ON run_log BEGIN SELECT RAISE(ABORT, 'run_log is append-only'); END;
CREATE TRIGGER step_strips_no_delete BEFORE DELETE ON step_strips BEGIN SELECT RAISE(ABORT, 'step_strips is append-only'); END;
CREATE TRIGGER step_strips_no_update BEFORE UPDATE ON step_strips BEGIN SELECT RAISE(ABORT, 'step_strips is append-only'); END;
CREATE TRIGGER time_rows_no_delete BEFORE DELETE ON time_rows BEGIN SELECT RAISE(ABORT, 'time_rows is append-only'); END;
CREATE TRIGGER time_rows_no_update BEFORE UPDATE ON time_rows BEGIN SELECT RAISE(ABORT, 'time_rows is append-only'); END;
