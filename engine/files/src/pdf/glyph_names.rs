//! Names of glyphs to characters.

/// The character (or characters, for a ligature) that a glyph's name stands
/// for; `None` when the name says nothing, as `g12` and `cid7` do.
/// Source: Adobe Glyph List for New Fonts and Glyph List, the part for Latin
/// and Greek letters, figures and signs (opened, in fontTools).
pub(super) fn text_of(name: &str, into: &mut String) -> bool {
    // "f_f_i" is a ligature, "one.tnum" a variant.
    let name = name.split('.').next().unwrap_or("");
    let before = into.len();
    for part in name.split('_') {
        match one(part) {
            Some(c) => into.push(c),
            None => {
                into.truncate(before);
                return false;
            }
        }
    }
    true
}

fn one(name: &str) -> Option<char> {
    let mut letters = name.chars();
    if let (Some(only), None) = (letters.next(), letters.next()) {
        return Some(only).filter(char::is_ascii_alphabetic);
    }
    match name {
        "space" | "nbspace" | "nonbreakingspace" => return Some(' '),
        "quotedbl" => return Some('"'),
        "backslash" => return Some('\\'),
        "softhyphen" | "sfthyphen" => return Some('-'),
        _ => {}
    }
    let hex = name
        .strip_prefix("uni")
        .filter(|h| h.len() == 4)
        .or_else(|| name.strip_prefix('u').filter(|h| (4..=6).contains(&h.len())));
    if let Some(c) = hex.and_then(|h| u32::from_str_radix(h, 16).ok()).and_then(char::from_u32) {
        return Some(c);
    }
    let mut words = NAMES.split(' ');
    while let (Some(word), Some(c)) = (words.next(), words.next()) {
        if word == name {
            return c.chars().next();
        }
    }
    None
}

const NAMES: &str = "AE Æ Aacute Á Abreve Ă Acircumflex Â Adieresis Ä Agrave À Alpha Α Amacron Ā Aogonek Ą \
    Aring Å Atilde Ã Beta Β Cacute Ć Ccaron Č Ccedilla Ç Ccircumflex Ĉ Cdotaccent Ċ Chi Χ \
    Dcaron Ď Dcroat Đ Delta ∆ Eacute É Ebreve Ĕ Ecaron Ě Ecircumflex Ê Edieresis Ë \
    Edotaccent Ė Egrave È Emacron Ē Eng Ŋ Eogonek Ę Epsilon Ε Eta Η Eth Ð Euro € Gamma Γ \
    Gbreve Ğ Gcircumflex Ĝ Gdotaccent Ġ Hbar Ħ Hcircumflex Ĥ IJ Ĳ Iacute Í Ibreve Ĭ \
    Icircumflex Î Idieresis Ï Idotaccent İ Igrave Ì Imacron Ī Iogonek Į Iota Ι \
    Iotadieresis Ϊ Itilde Ĩ Jcircumflex Ĵ Kappa Κ Lacute Ĺ Lambda Λ Lcaron Ľ Ldot Ŀ Lslash Ł \
    Mu Μ Nacute Ń Ncaron Ň Ntilde Ñ Nu Ν OE Œ Oacute Ó Obreve Ŏ Ocircumflex Ô Odieresis Ö \
    Ograve Ò Ohungarumlaut Ő Omacron Ō Omega Ω Omicron Ο Oslash Ø Otilde Õ Phi Φ Pi Π Psi Ψ \
    Racute Ŕ Rcaron Ř Rho Ρ Sacute Ś Scaron Š Scedilla Ş Scircumflex Ŝ Sigma Σ Tau Τ Tbar Ŧ \
    Tcaron Ť Theta Θ Thorn Þ Uacute Ú Ubreve Ŭ Ucircumflex Û Udieresis Ü Ugrave Ù \
    Uhungarumlaut Ű Umacron Ū Uogonek Ų Upsilon Υ Upsilondieresis Ϋ Uring Ů Utilde Ũ \
    Wcircumflex Ŵ Xi Ξ Yacute Ý Ycircumflex Ŷ Ydieresis Ÿ Zacute Ź Zcaron Ž Zdotaccent Ż \
    Zeta Ζ aacute á abreve ă acircumflex â acute ´ adieresis ä ae æ agrave à alpha α \
    alphatonos ά amacron ā ampersand & angle ∠ aogonek ą approxequal ≈ aring å arrowdown ↓ \
    arrowleft ← arrowright → arrowup ↑ asciicircum ^ asciitilde ~ asterisk * asteriskmath ∗ \
    at @ atilde ã bar | beta β braceleft { braceright } bracketleft [ bracketright ] breve ˘ \
    brokenbar ¦ bullet • cacute ć caron ˇ ccaron č ccedilla ç ccircumflex ĉ cdotaccent ċ \
    cedilla ¸ cent ¢ chi χ circle ○ circumflex ˆ colon : comma , congruent ≅ copyright © \
    currency ¤ dagger † daggerdbl ‡ dcaron ď dcroat đ degree ° delta δ dieresis ¨ divide ÷ \
    dollar $ dotaccent ˙ dotlessi ı eacute é ebreve ĕ ecaron ě ecircumflex ê edieresis ë \
    edotaccent ė egrave è eight 8 eightinferior ₈ eightsuperior ⁸ element ∈ ellipsis … \
    emacron ē emdash — emptyset ∅ endash – eng ŋ eogonek ę epsilon ε epsilontonos έ equal = \
    equalsuperior ⁼ equivalence ≡ eta η etatonos ή eth ð exclam ! exclamdown ¡ existential ∃ \
    ff ﬀ ffi ﬃ ffl ﬄ fi ﬁ figuredash ‒ filledbox ■ five 5 fiveeighths ⅝ fiveinferior ₅ \
    fivesuperior ⁵ fl ﬂ florin ƒ four 4 fourinferior ₄ foursuperior ⁴ gamma γ gbreve ğ \
    gcircumflex ĝ gdotaccent ġ germandbls ß gradient ∇ grave ` greater > greaterequal ≥ \
    guillemotleft « guillemotright » guilsinglleft ‹ guilsinglright › hbar ħ hcircumflex ĥ \
    hungarumlaut ˝ hyphen - iacute í ibreve ĭ icircumflex î idieresis ï igrave ì ij ĳ \
    imacron ī infinity ∞ integral ∫ intersection ∩ iogonek į iota ι iotatonos ί itilde ĩ \
    jcircumflex ĵ kappa κ kgreenlandic ĸ lacute ĺ lambda λ lcaron ľ ldot ŀ less < \
    lessequal ≤ logicaland ∧ logicalnot ¬ logicalor ∨ longs ſ lozenge ◊ lslash ł macron ¯ \
    minus − minute ′ mu µ multiply × nacute ń napostrophe ŉ ncaron ň nine 9 nineinferior ₉ \
    ninesuperior ⁹ notelement ∉ notequal ≠ nsuperior ⁿ ntilde ñ nu ν numbersign # oacute ó \
    obreve ŏ ocircumflex ô odieresis ö oe œ ogonek ˛ ograve ò ohungarumlaut ő omacron ō \
    omega ω omicron ο one 1 onedotenleader ․ oneeighth ⅛ onehalf ½ oneinferior ₁ \
    onequarter ¼ onesuperior ¹ onethird ⅓ ordfeminine ª ordmasculine º orthogonal ∟ oslash ø \
    otilde õ paragraph ¶ parenleft ( parenleftinferior ₍ parenleftsuperior ⁽ parenright ) \
    parenrightinferior ₎ parenrightsuperior ⁾ partialdiff ∂ percent % period . \
    periodcentered · perthousand ‰ phi φ pi π plus + plusminus ± plussuperior ⁺ product ∏ \
    proportional ∝ psi ψ question ? questiondown ¿ quotedblbase „ quotedblleft “ \
    quotedblright ” quoteleft ‘ quotereversed ‛ quoteright ’ quotesinglbase ‚ quotesingle ' \
    racute ŕ radical √ rcaron ř registered ® rho ρ ring ˚ sacute ś scaron š scedilla ş \
    scircumflex ŝ second ″ section § semicolon ; seven 7 seveneighths ⅞ seveninferior ₇ \
    sevensuperior ⁷ sigma σ sigma1 ς similar ∼ six 6 sixinferior ₆ sixsuperior ⁶ slash / \
    sterling £ suchthat ∋ summation ∑ tau τ tbar ŧ tcaron ť therefore ∴ theta θ thorn þ \
    three 3 threeeighths ⅜ threeinferior ₃ threequarters ¾ threesuperior ³ tilde ˜ \
    trademark ™ two 2 twodotenleader ‥ twoinferior ₂ twosuperior ² twothirds ⅔ uacute ú \
    ubreve ŭ ucircumflex û udieresis ü ugrave ù uhungarumlaut ű umacron ū underscore _ \
    underscoredbl ‗ union ∪ uogonek ų upsilon υ upsilondieresistonos ΰ uring ů utilde ũ \
    wcircumflex ŵ xi ξ yacute ý ycircumflex ŷ ydieresis ÿ yen ¥ zacute ź zcaron ž \
    zdotaccent ż zero 0 zeroinferior ₀ zerosuperior ⁰ zeta ζ";

#[cfg(test)]
mod tests {
    use super::*;

    fn text(name: &str) -> Option<String> {
        let mut into = String::new();
        text_of(name, &mut into).then_some(into)
    }

    #[test]
    fn names_become_characters() {
        for (name, expected) in [
            ("A", "A"),
            ("seven", "7"),
            ("seven.tnum", "7"),
            ("mu", "µ"),
            ("twoinferior", "₂"),
            ("odieresis", "ö"),
            ("lessequal", "≤"),
            ("uni00B5", "µ"),
            ("u2082", "₂"),
            ("f_f_i", "ffi"),
            ("fi", "\u{fb01}"),
            ("space", " "),
        ] {
            assert_eq!(text(name).as_deref(), Some(expected), "{name}");
        }
    }

    #[test]
    fn names_that_say_nothing_give_nothing() {
        for name in ["g12", "cid7", "a1", "", ".notdef", "G_x12", "7"] {
            assert_eq!(text(name), None, "{name}");
        }
    }
}
