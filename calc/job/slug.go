package job

import (
	"fmt"
	"hash/fnv"
	"strings"

	"pierbook/calc/bidi"
)

// mostSlug keeps the name of a folder short enough for any system.
const mostSlug = 60

// Slug returns a name for the job's folder: small letters, digits and single
// hyphens, made from the job's name. It is never empty, never a name that an
// operating system keeps for itself, and always the same for the same name.
func (j *Job) Slug() string { return slug(bidi.Bare(j.Name)) }

func slug(name string) string {
	var b strings.Builder
	lost := false // letters that have no plain form
	for _, r := range strings.ToLower(name) {
		plain, known := plainLetters[r]
		switch {
		case 'a' <= r && r <= 'z' || '0' <= r && r <= '9':
			b.WriteRune(r)
		case known:
			b.WriteString(plain)
		case r == '\'' || r == '’':
		default:
			lost = lost || r > 0x24f
			if s := b.String(); s != "" && !strings.HasSuffix(s, "-") {
				b.WriteByte('-')
			}
		}
	}
	plain := strings.Trim(b.String(), "-")
	if len(plain) > mostSlug {
		plain, lost = strings.TrimRight(plain[:mostSlug-9], "-"), true
	}
	if plain == "" || lost || reserved[plain] {
		plain = strings.Trim(plain+"-"+fingerprint(name), "-")
	}
	return plain
}

// fingerprint tells two names apart whose letters were lost.
func fingerprint(name string) string {
	sum := fnv.New32a()
	sum.Write([]byte(name))
	return fmt.Sprintf("%08x", sum.Sum32())
}

// reserved are device names of operating systems, and the front page.
var reserved = func() map[string]bool {
	names := map[string]bool{"con": true, "prn": true, "aux": true, "nul": true, "index": true}
	for i := range 10 {
		names[fmt.Sprintf("com%d", i)] = true
		names[fmt.Sprintf("lpt%d", i)] = true
	}
	return names
}()

// plainLetters writes the accented letters of Latin alphabets without accents.
var plainLetters = func() map[rune]string {
	letters := map[rune]string{'ß': "ss", 'æ': "ae", 'œ': "oe", 'þ': "th", 'ä': "ae", 'ö': "oe", 'ü': "ue", 'ø': "o", 'å': "a"}
	for plain, accented := range map[string]string{
		"a": "àáâãāăą", "c": "çćĉċč", "d": "ďđð", "e": "èéêëēĕėęě", "g": "ĝğġģ", "h": "ĥħ", "i": "ìíîïĩīĭįı", "j": "ĵ",
		"k": "ķĸ", "l": "ĺļľŀł", "n": "ñńņňŉŋ", "o": "òóôõōŏő", "r": "ŕŗř", "s": "śŝşšș", "t": "ţťŧț", "u": "ùúûũūŭůűų",
		"w": "ŵ", "y": "ýÿŷ", "z": "źżž",
	} {
		for _, r := range accented {
			letters[r] = plain
		}
	}
	return letters
}()
