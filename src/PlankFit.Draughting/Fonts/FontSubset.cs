using System.Buffers.Binary;
using System.Text;

namespace PlankFit.Draughting.Fonts;

/// <summary>
/// A font file with only the glyphs that one document needs. The drawing library embeds a TrueType file whole, 300 KB of it in every PDF; the
/// letters of a sheet take a tenth of that. Glyphs keep their numbers, the rest are left empty. Source: the OpenType specification, tables glyf, loca, cmap
/// (format 12) and post (version 3).
/// </summary>
public static class FontSubset
{
    private static readonly string[] Kept = ["OS/2", "head", "hhea", "hmtx", "maxp", "name"];

    /// <param name="signs">Unicode code points; those that the font lacks are left out.</param>
    public static byte[] Of(FontFile font, IEnumerable<int> signs)
    {
        (int Sign, int Glyph)[] drawn = signs
            .Select(sign => (Sign: sign, Glyph: font.Glyph(sign)))
            .Where(pair => pair.Glyph != 0)
            .Distinct()
            .OrderBy(pair => pair.Sign)
            .ToArray();
        (byte[]? places, byte[]? outlines) = Outlines(font, drawn.Select(pair => pair.Glyph));

        var tables = new SortedDictionary<string, byte[]>(StringComparer.Ordinal)
        {
            ["cmap"] = Characters(drawn),
            ["glyf"] = outlines,
            ["loca"] = places,
            ["post"] = WithoutNames(font.Table("post")),
        };
        foreach (string tag in Kept)
        {
            tables[tag] = font.Table(tag).ToArray();
        }

        Write16(tables["head"], 50, 1); // the places of the outlines are 32 bits wide
        return Assemble(tables);
    }

    private static (byte[] Places, byte[] Outlines) Outlines(FontFile font, IEnumerable<int> glyphs)
    {
        var wanted = new SortedSet<int> { 0 };
        var waiting = new Stack<int>(glyphs);
        while (waiting.TryPop(out int glyph))
        {
            if (wanted.Add(glyph))
            {
                foreach (int part in Parts(Outline(font, glyph)))
                {
                    waiting.Push(part);
                }
            }
        }

        byte[] places = new byte[4 * (font.GlyphCount + 1)];
        var outlines = new MemoryStream();
        for (int glyph = 0; glyph < font.GlyphCount; glyph++)
        {
            Write32(places, 4 * glyph, (uint)outlines.Length);
            if (wanted.Contains(glyph))
            {
                outlines.Write(Outline(font, glyph));
                outlines.SetLength((outlines.Length + 3) & ~3L);
                outlines.Position = outlines.Length;
            }
        }

        Write32(places, 4 * font.GlyphCount, (uint)outlines.Length);
        return (places, outlines.ToArray());
    }

    private static ReadOnlySpan<byte> Outline(FontFile font, int glyph)
    {
        ReadOnlySpan<byte> places = font.Table("loca");
        bool wide = BinaryPrimitives.ReadInt16BigEndian(font.Table("head")[50..]) == 1;
        int from = Place(places, glyph, wide);
        return font.Table("glyf")[from..Place(places, glyph + 1, wide)];
    }

    private static int Place(ReadOnlySpan<byte> places, int glyph, bool wide) =>
        wide
            ? BinaryPrimitives.ReadInt32BigEndian(places[(4 * glyph)..])
            : 2 * BinaryPrimitives.ReadUInt16BigEndian(places[(2 * glyph)..]);

    /// <summary>The glyphs that a composite one (an accented letter) is put together from.</summary>
    private static List<int> Parts(ReadOnlySpan<byte> outline)
    {
        const int WordsForPlace = 0x1;
        const int OneScale = 0x8;
        const int More = 0x20;
        const int TwoScales = 0x40;
        const int Matrix = 0x80;
        var parts = new List<int>();
        if (outline.IsEmpty || BinaryPrimitives.ReadInt16BigEndian(outline) >= 0)
        {
            return parts;
        }

        int flags;
        int at = 10;
        do
        {
            flags = BinaryPrimitives.ReadUInt16BigEndian(outline[at..]);
            parts.Add(BinaryPrimitives.ReadUInt16BigEndian(outline[(at + 2)..]));
            at += (flags & WordsForPlace) != 0 ? 8 : 6;
            at += (flags & (OneScale | TwoScales | Matrix)) switch
            {
                OneScale => 2,
                TwoScales => 4,
                Matrix => 8,
                _ => 0,
            };
        } while ((flags & More) != 0);

        return parts;
    }

    private static byte[] Characters((int Sign, int Glyph)[] drawn)
    {
        byte[] table = new byte[12 + 16 + (12 * drawn.Length)];
        Write16(table, 2, 1);
        Write16(table, 4, 3);
        Write16(table, 6, 10);
        Write32(table, 8, 12);
        Write16(table, 12, 12);
        Write32(table, 16, (uint)(table.Length - 12));
        Write32(table, 24, (uint)drawn.Length);
        for (int i = 0; i < drawn.Length; i++)
        {
            Write32(table, 28 + (12 * i), (uint)drawn[i].Sign);
            Write32(table, 32 + (12 * i), (uint)drawn[i].Sign);
            Write32(table, 36 + (12 * i), (uint)drawn[i].Glyph);
        }

        return table;
    }

    private static byte[] WithoutNames(ReadOnlySpan<byte> post)
    {
        byte[] made = post[..32].ToArray();
        Write32(made, 0, 0x00030000);
        return made;
    }

    private static byte[] Assemble(SortedDictionary<string, byte[]> tables)
    {
        int power = (int)Math.Log2(tables.Count);
        byte[] file = new byte[12 + (16 * tables.Count) + tables.Values.Sum(t => Padded(t.Length))];
        Write32(file, 0, 0x00010000);
        Write16(file, 4, tables.Count);
        Write16(file, 6, 16 << power);
        Write16(file, 8, power);
        Write16(file, 10, (16 * tables.Count) - (16 << power));
        (int entry, int at, int head) = (12, 12 + (16 * tables.Count), 0);
        foreach ((string? tag, byte[]? table) in tables)
        {
            if (tag == "head")
            {
                head = at;
                Write32(table, 8, 0);
            }

            table.CopyTo(file, at);
            Encoding.ASCII.GetBytes(tag, file.AsSpan(entry));
            Write32(file, entry + 4, Sum(file.AsSpan(at, Padded(table.Length))));
            Write32(file, entry + 8, (uint)at);
            Write32(file, entry + 12, (uint)table.Length);
            (entry, at) = (entry + 16, at + Padded(table.Length));
        }

        Write32(file, head + 8, 0xB1B0AFBA - Sum(file));
        return file;
    }

    private static uint Sum(ReadOnlySpan<byte> words)
    {
        uint sum = 0u;
        for (int i = 0; i < words.Length; i += 4)
        {
            sum += BinaryPrimitives.ReadUInt32BigEndian(words[i..]);
        }

        return sum;
    }

    private static int Padded(int length) => (length + 3) & ~3;

    private static void Write16(byte[] into, int at, int value) =>
        BinaryPrimitives.WriteUInt16BigEndian(into.AsSpan(at), (ushort)value);

    private static void Write32(byte[] into, int at, uint value) =>
        BinaryPrimitives.WriteUInt32BigEndian(into.AsSpan(at), value);
}
