-- SPDX-License-Identifier: Apache-2.0
-- For columns that take nothing but a length: what is no length, or may be two, is refused where it is written.
CREATE DOMAIN rodt_reading AS text CONSTRAINT rodt_reading_is_a_length
    CHECK (VALUE IS NULL OR rodt_length(VALUE) IS NOT NULL);
COMMENT ON DOMAIN rodt_reading IS 'a length as a tape is read: 2 1/8, 54 mm';
