-- The search reads words without their accents and finds misspelt ones by their trigrams. Both extensions come with
-- PostgreSQL and may be made by any account that may create in the database.
DO $$
DECLARE
    wanted text;
BEGIN
    FOREACH wanted IN ARRAY ARRAY['pg_trgm', 'unaccent'] LOOP
        EXECUTE format('CREATE EXTENSION IF NOT EXISTS %I WITH SCHEMA public', wanted);
    END LOOP;
EXCEPTION
    WHEN insufficient_privilege THEN
        RAISE EXCEPTION 'This account may not make the extension %. Ask the server''s administrator to run in this database: CREATE EXTENSION pg_trgm SCHEMA public; CREATE EXTENSION unaccent SCHEMA public;', wanted;
    WHEN undefined_file OR feature_not_supported THEN
        RAISE EXCEPTION 'This PostgreSQL server does not have the extension %. Ask its administrator to install the contributed modules (package postgresql-contrib), then start again.', wanted;
END
$$;

-- CreateTable
CREATE TABLE "catalogue_entries" (
    "key" TEXT NOT NULL,
    "system" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "look_for" TEXT NOT NULL,
    "observed" TEXT NOT NULL,
    "consequence" TEXT NOT NULL,
    "recommendation" TEXT NOT NULL,
    "urgency" TEXT NOT NULL,
    "within_days" INTEGER,
    "raise" TEXT,
    "lower" TEXT,
    "harms" TEXT[],
    "references" TEXT[],
    "worksheets" TEXT[],
    "cautions" TEXT[],
    "related" TEXT[],
    "diagram" TEXT,
    "also_called" TEXT[],
    "version" INTEGER NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "search" tsvector,
    "standards" TEXT,

    CONSTRAINT "catalogue_entries_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "firm_catalogue_entries" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "system" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "look_for" TEXT NOT NULL,
    "observed" TEXT NOT NULL,
    "consequence" TEXT NOT NULL,
    "recommendation" TEXT NOT NULL,
    "urgency" TEXT NOT NULL,
    "within_days" INTEGER,
    "raise" TEXT,
    "lower" TEXT,
    "harms" TEXT[],
    "references" TEXT[],
    "worksheets" TEXT[],
    "cautions" TEXT[],
    "related" TEXT[],
    "also_called" TEXT[],
    "version" INTEGER NOT NULL,
    "current" BOOLEAN NOT NULL DEFAULT true,
    "saved_at" TIMESTAMPTZ(3) NOT NULL,
    "saved_by_id" UUID,
    "saved_by" TEXT NOT NULL,
    "retired_at" TIMESTAMPTZ(3),
    "retired_by" TEXT,
    "search" tsvector,
    "standards" TEXT,

    CONSTRAINT "firm_catalogue_entries_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "catalogue_words" (
    "word" TEXT NOT NULL,

    CONSTRAINT "catalogue_words_pkey" PRIMARY KEY ("word")
);

-- CreateTable
CREATE TABLE "firm_catalogue_words" (
    "firm_id" UUID NOT NULL,
    "word" TEXT NOT NULL,

    CONSTRAINT "firm_catalogue_words_pkey" PRIMARY KEY ("firm_id","word")
);

-- CreateIndex
CREATE INDEX "catalogue_entries_search_idx" ON "catalogue_entries" USING GIN ("search");

-- CreateIndex
CREATE INDEX "firm_catalogue_entries_firm_id_current_system_key_idx" ON "firm_catalogue_entries"("firm_id", "current", "system", "key");

-- CreateIndex
CREATE INDEX "firm_catalogue_entries_search_idx" ON "firm_catalogue_entries" USING GIN ("search");

-- CreateIndex
CREATE UNIQUE INDEX "firm_catalogue_entries_firm_id_key_version_key" ON "firm_catalogue_entries"("firm_id", "key", "version");

-- CreateIndex
CREATE INDEX "catalogue_words_word_idx" ON "catalogue_words" USING GIST ("word" gist_trgm_ops);

-- AddForeignKey
ALTER TABLE "firm_catalogue_entries" ADD CONSTRAINT "firm_catalogue_entries_firm_id_fkey" FOREIGN KEY ("firm_id") REFERENCES "firms"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AlterTable
ALTER TABLE "findings" ADD COLUMN "catalogue_version" INTEGER;

-- From here on by hand: what a Prisma schema can't say.

-- Words as in English, their accents apart; and words as they are written, for finding those misspelt.
CREATE TEXT SEARCH CONFIGURATION public.garboard_english (COPY = pg_catalog.english);
ALTER TEXT SEARCH CONFIGURATION public.garboard_english
    ALTER MAPPING FOR hword, hword_part, word WITH public.unaccent, english_stem;
CREATE TEXT SEARCH CONFIGURATION public.garboard_words (COPY = pg_catalog.simple);
ALTER TEXT SEARCH CONFIGURATION public.garboard_words
    ALTER MAPPING FOR hword, hword_part, word WITH public.unaccent, simple;

-- Designations as words: `ABYC A-1` and `abyc a1` are both ` abyc a 1 `; several are kept apart by bars.
CREATE FUNCTION garboard_designations(designations text[]) RETURNS text
LANGUAGE sql STABLE SET search_path = public, pg_temp
AS $$
    SELECT ' ' || btrim(regexp_replace(regexp_replace(regexp_replace(
        lower(array_to_string(designations, ' | ')),
        '([a-z])([0-9])', '\1 \2', 'g'), '([0-9])([a-z])', '\1 \2', 'g'), '[^a-z0-9|]+', ' ', 'g')) || ' ';
$$;

-- What the search looks in is worked from the words whenever they are written, whoever writes them.
CREATE FUNCTION garboard_catalogue_search() RETURNS trigger
LANGUAGE plpgsql SET search_path = public, pg_temp
AS $$
DECLARE
    -- Standards are also written together: `ABYC A-1` is found as `A1`, `ISO 10239` as `ISO10239`.
    codes text := array_to_string(NEW."references", ' ');
    joined text;
BEGIN
    SELECT string_agg(regexp_replace(r, '[^[:alnum:]]+', '', 'g'), ' ') INTO joined FROM unnest(NEW."references") AS r;
    NEW.standards := garboard_designations(NEW."references");
    NEW.search :=
        setweight(to_tsvector('garboard_english', NEW.title || ' | ' || array_to_string(NEW.also_called, ' | ')), 'A')
        || setweight(to_tsvector('garboard_english', concat_ws(' ', replace(NEW.system, '-', ' '), codes,
            regexp_replace(codes, '([A-Za-z])-([0-9])', '\1\2', 'g'), joined)), 'B')
        || setweight(to_tsvector('garboard_english', concat_ws(' ', NEW.observed, NEW.look_for)), 'C')
        || setweight(to_tsvector('garboard_english', concat_ws(' ', NEW.consequence, NEW.recommendation, NEW.raise,
            NEW.lower, array_to_string(NEW.cautions, ' '))), 'D');
    RETURN NEW;
END
$$;
CREATE TRIGGER search BEFORE INSERT OR UPDATE OF title, also_called, system, "references", observed, look_for,
    consequence, recommendation, raise, lower, cautions ON "catalogue_entries"
    FOR EACH ROW EXECUTE FUNCTION garboard_catalogue_search();
CREATE TRIGGER search BEFORE INSERT ON "firm_catalogue_entries"
    FOR EACH ROW EXECUTE FUNCTION garboard_catalogue_search();

-- The different words of some texts, of three letters and more: those that a misspelt one can have been meant for.
CREATE FUNCTION garboard_words_of(texts text[]) RETURNS SETOF text
LANGUAGE sql STABLE SET search_path = public, pg_temp
AS $$
    SELECT word FROM unnest(tsvector_to_array(to_tsvector('garboard_words', array_to_string(texts, ' ')))) AS word
    WHERE word ~ '^[[:alpha:]]{3,40}$';
$$;

CREATE FUNCTION garboard_firm_catalogue_words() RETURNS trigger
LANGUAGE plpgsql SET search_path = public, pg_temp
AS $$
BEGIN
    INSERT INTO firm_catalogue_words (firm_id, word)
    SELECT NEW.firm_id, word FROM garboard_words_of(ARRAY[NEW.title, NEW.look_for, NEW.observed, NEW.consequence,
        NEW.recommendation] || NEW.also_called) AS word
    ON CONFLICT DO NOTHING;
    RETURN NULL;
END
$$;
CREATE TRIGGER words AFTER INSERT ON "firm_catalogue_entries"
    FOR EACH ROW EXECUTE FUNCTION garboard_firm_catalogue_words();

-- Ours come from the code; what a firm has saved stays as it is, but for which of its versions is read.
REVOKE INSERT, UPDATE, DELETE ON "catalogue_entries", "catalogue_words" FROM garboard_app;
REVOKE UPDATE, DELETE ON "firm_catalogue_entries" FROM garboard_app;
GRANT UPDATE ("current", "retired_at", "retired_by") ON "firm_catalogue_entries" TO garboard_app;

-- Row-level security, as for every table with a firm.
ALTER TABLE "firm_catalogue_entries" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_firms ON "firm_catalogue_entries" TO garboard_app
    USING (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]))
    WITH CHECK (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]));
ALTER TABLE "firm_catalogue_words" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_firms ON "firm_catalogue_words" TO garboard_app
    USING (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]))
    WITH CHECK (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]));
