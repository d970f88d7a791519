using System.Buffers.Binary;
using System.Text;

namespace PlankFit.Draughting.Fonts;

/// <summary>
/// What is needed of a TrueType file: which glyph draws a sign, how wide it is, how tall the capitals are.
/// Source: the OpenType specification, tables cmap (format 4), head, hhea, hmtx, OS/2.
/// </summary>
public sealed class FontFile
{
    private readonly byte[] bytes;
    private readonly Dictionary<string, (int Offset, int Length)> tables = [];
    private readonly int characters; // the start of the cmap's format 4 subtable
    private readonly int advances;
    private readonly int widths; // the start of hmtx

    // What was looked up before, one more than the glyph; nought where it was not. Written by several threads, always with the same answer.
    private readonly int[] known = new int[0x2800];

    // Of plain letters, which nearly all words are made of.
    private readonly int[] plain = new int[0x80];

    public FontFile(byte[] bytes)
    {
        this.bytes = bytes;
        for (int i = 0; i < Word(4); i++)
        {
            int entry = 12 + (16 * i);
            string tag = Encoding.ASCII.GetString(bytes, entry, 4);
            tables[tag] = (Long(entry + 8), Long(entry + 12));
        }

        UnitsPerEm = Word(Start("head") + 18);
        CapHeight = Word(Start("OS/2") + 88);
        advances = Word(Start("hhea") + 34);
        GlyphCount = Word(Start("maxp") + 4);
        characters = UnicodeCharacters();
        widths = Start("hmtx");
        for (int sign = 0; sign < plain.Length; sign++)
        {
            plain[sign] = Advance(Glyph(sign));
        }
    }

    public ReadOnlyMemory<byte> Bytes => bytes;

    public int UnitsPerEm { get; }

    /// <summary>Height of a flat capital in the font's units.</summary>
    public int CapHeight { get; }

    public int GlyphCount { get; }

    public ReadOnlySpan<byte> Table(string tag) => bytes.AsSpan(Start(tag), tables[tag].Length);

    /// <summary>The font size at which capitals have this height.</summary>
    public double SizeFor(double capHeightMm) => capHeightMm * UnitsPerEm / CapHeight;

    /// <summary>The advance widths of a text in the font's units, sign after sign.</summary>
    public long Advances(string text)
    {
        long units = 0L;
        foreach (char letter in text)
        {
            if (letter >= plain.Length)
            {
                return AnyAdvances(text);
            }

            units += plain[letter];
        }

        return units;
    }

    private long AnyAdvances(string text)
    {
        long units = 0L;
        foreach (Rune sign in text.EnumerateRunes())
        {
            units += Advance(Glyph(sign.Value));
        }

        return units;
    }

    /// <summary>The advance width in the font's units.</summary>
    public int Advance(int glyph) => Word(widths + (4 * Math.Min(glyph, advances - 1)));

    /// <summary>The glyph for a sign, or 0 where the font has none. Signs beyond the first 65,536 are not looked for.</summary>
    public int Glyph(int sign)
    {
        if (sign >= this.known.Length)
        {
            return sign > 0xFFFF ? 0 : Found(sign);
        }

        int known = this.known[sign];
        if (known == 0)
        {
            known = Found(sign) + 1;
            this.known[sign] = known;
        }

        return known - 1;
    }

    private int Found(int sign)
    {
        int doubled = Word(characters + 6);
        int end = characters + 14;
        int start = end + doubled + 2;
        int low = 0;
        for (int high = (doubled / 2) - 1; low < high; )
        {
            int middle = (low + high) / 2;
            (low, high) = Word(end + (2 * middle)) < sign ? (middle + 1, high) : (low, middle);
        }

        int first = Word(start + (2 * low));
        if (first > sign)
        {
            return 0;
        }

        int delta = Word(start + doubled + (2 * low));
        int rangeAt = start + (2 * doubled) + (2 * low);
        int range = Word(rangeAt);
        if (range == 0)
        {
            return (sign + delta) & 0xFFFF;
        }

        int glyph = Word(rangeAt + range + (2 * (sign - first)));
        return glyph == 0 ? 0 : (glyph + delta) & 0xFFFF;
    }

    private int UnicodeCharacters()
    {
        int table = Start("cmap");
        for (int i = 0; i < Word(table + 2); i++)
        {
            int entry = table + 4 + (8 * i);
            int subtable = table + Long(entry + 4);
            if (Word(entry) == 3 && Word(entry + 2) == 1 && Word(subtable) == 4)
            {
                return subtable;
            }
        }

        throw new InvalidOperationException("The lettering has no Unicode table of format 4.");
    }

    private int Start(string tag) =>
        tables.TryGetValue(tag, out (int Offset, int Length) place)
            ? place.Offset
            : throw new InvalidOperationException($"The lettering has no table {tag}.");

    private int Word(int at) => BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at));

    private int Long(int at) => BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(at));
}
