namespace PlankFit.Draughting.Dxf;

/// <summary>
/// Letters that ASCII lacks, in letters that it has. Latin ones lose their accents. Cyrillic by ICAO Doc 9303, part 3, Greek by ELOT 743, letter by letter
/// (both from memory): what passports have, and what can be read aloud.
/// </summary>
internal static class DxfLetters
{
    private const string Latin =
        "A=ÀÁÂÃÄÅĀĂĄ a=àáâãäåāăą AE=Æ ae=æ C=ÇĆĈĊČ c=çćĉċč D=ÐĎĐ d=ðďđ E=ÈÉÊËĒĔĖĘĚ e=èéêëēĕėęě G=ĜĞĠĢ g=ĝğġģ "
        + "H=ĤĦ h=ĥħ I=ÌÍÎÏĨĪĬĮİ i=ìíîïĩīĭįı IJ=Ĳ ij=ĳ J=Ĵ j=ĵ K=Ķ k=ķĸ L=ĹĻĽĿŁ l=ĺļľŀł N=ÑŃŅŇŊ n=ñńņňŋ "
        + "O=ÒÓÔÕÖØŌŎŐ o=òóôõöøōŏő OE=Œ oe=œ R=ŔŖŘ r=ŕŗř S=ŚŜŞŠȘ s=śŝşšſș ss=ß T=ŢŤŦȚ t=ţťŧț Th=Þ th=þ "
        + "U=ÙÚÛÜŨŪŬŮŰŲ u=ùúûüũūŭůűų W=Ŵ w=ŵ Y=ÝŶŸ y=ýÿŷ Z=ŹŻŽ z=źżž";

    // The soft sign has no letter there.
    private const string Cyrillic =
        "A=А B=Б V=В G=ГЃҐ D=ДЂ E=ЕЭЁЀ ZH=Ж Z=З I=ИЙІЇЍ K=КЌ L=Л M=М N=Н O=О P=П R=Р S=С T=Т U=УЎ F=Ф KH=Х "
        + "TS=Ц CH=Ч SH=Ш SHCH=Щ IE=ЪЄ Y=Ы IU=Ю IA=Я DZ=ЅЏ J=Ј LJ=Љ NJ=Њ C=Ћ a=а b=б v=в g=гѓґ d=дђ e=еэёѐ zh=ж "
        + "z=з i=ийіїѝ k=кќ l=л m=м n=н o=о p=п r=р s=с t=т u=уў f=ф kh=х ts=ц ch=ч sh=ш shch=щ ie=ъє y=ы iu=ю "
        + "ia=я dz=ѕџ j=ј lj=љ nj=њ c=ћ";

    private const string Greek =
        "A=ΑΆ V=Β G=Γ D=Δ E=ΕΈ Z=Ζ I=ΗΉΙΊΪ TH=Θ K=Κ L=Λ M=Μ N=Ν X=Ξ O=ΟΌΩΏ P=Π R=Ρ S=Σ T=Τ Y=ΥΎΫ F=Φ CH=Χ "
        + "PS=Ψ a=αά v=β g=γ d=δ e=εέ z=ζ i=ηήιίϊ th=θ k=κ l=λ m=μ n=ν x=ξ o=οόωώ p=π r=ρ s=σ t=τ y=υύϋ f=φ "
        + "ch=χ ps=ψ s=ς i=ΐ y=ΰ";

    private static readonly Dictionary<char, string> Plain = Read($"{Latin} {Cyrillic} {Greek}");

    /// <summary>The letter in ASCII; null where the table has not got it.</summary>
    public static string? Of(char letter) =>
        letter is 'Ь' or 'ь' ? "" : Plain.GetValueOrDefault(letter);

    private static Dictionary<char, string> Read(string table)
    {
        var read = new Dictionary<char, string>();
        foreach (string entry in table.Split(' '))
        {
            string[] sides = entry.Split('=');
            foreach (char letter in sides[1])
            {
                read.Add(letter, sides[0]);
            }
        }

        return read;
    }
}
