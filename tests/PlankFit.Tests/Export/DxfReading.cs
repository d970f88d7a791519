using System.Globalization;

namespace PlankFit.Tests.Export;

/// <summary>
/// A strict reader of our own for DXF files, for the faults that no outside reader complains of: counts, layers, line types, owners, the seed of handles,
/// numbers, segments without length.
/// </summary>
internal sealed class DxfReading
{
    private readonly List<(int Code, string Value)> groups = [];
    private readonly List<DxfObject> objects = [];

    public DxfReading(byte[] file)
    {
        Assert.All(file, b => Assert.InRange(b, 0, 127));
        string text = System.Text.Encoding.ASCII.GetString(file);
        Assert.EndsWith("\r\n0\r\nEOF\r\n", text, StringComparison.Ordinal);
        string[] lines = text.Split("\r\n")[..^1];
        Assert.DoesNotContain(lines, l => l.Contains('\n') || l.Contains('\r'));
        Assert.Equal(0, lines.Length % 2);
        for (int i = 0; i < lines.Length; i += 2)
        {
            groups.Add((int.Parse(lines[i], CultureInfo.InvariantCulture), lines[i + 1]));
        }

        string section = "";
        for (int i = 0; i < groups.Count; i++)
        {
            if (groups[i].Code != 0)
            {
                continue;
            }

            int end = groups.FindIndex(i + 1, g => g.Code == 0);
            List<(int Code, string Value)> body = groups[(i + 1)..(end < 0 ? groups.Count : end)];
            section = groups[i].Value == "SECTION" ? body[0].Value : section;
            objects.Add(new(section, groups[i].Value, body));
        }
    }

    public IEnumerable<DxfObject> Entities =>
        objects.Where(o =>
            o.Section == "ENTITIES" && o.Kind is not ("SECTION" or "ENDSEC" or "EOF")
        );

    public string Header(string name)
    {
        int at = groups.FindIndex(g => g.Code == 9 && g.Value == name);
        Assert.True(at >= 0, name);
        return groups[at + 1].Value;
    }

    /// <summary>A header variable that is a point.</summary>
    public (double X, double Y) HeaderPoint(string name)
    {
        int at = groups.FindIndex(g => g.Code == 9 && g.Value == name);
        return (Number(groups[at + 1].Value), Number(groups[at + 2].Value));
    }

    public void HoldToTheRules()
    {
        NumbersAreNumbers();
        Assert.Equal(
            objects.Count(o => o.Kind == "SECTION"),
            objects.Count(o => o.Kind == "ENDSEC")
        );
        Assert.Equal(objects.Count(o => o.Kind == "TABLE"), objects.Count(o => o.Kind == "ENDTAB"));
        TablesCountTheirRecords();
        List<string?> layers = Names("LAYER");
        List<string?> lineTypes = Names("LTYPE");
        foreach (DxfObject entity in Entities)
        {
            Assert.Contains(entity.First(8), layers);
            Assert.Contains(entity.First(6) ?? "CONTINUOUS", lineTypes);
        }

        foreach (DxfObject? layer in objects.Where(o => o.Kind == "LAYER"))
        {
            Assert.Contains(layer.First(6), lineTypes);
            Assert.Matches("^[A-Z0-9_-]{1,31}$", layer.First(2));
        }

        Outlines();
        if (Header("$ACADVER") == "AC1015")
        {
            Handles();
        }
        else
        {
            Assert.DoesNotContain(groups, g => g.Code is 5 or 100 or 330);
            Assert.DoesNotContain(Entities, e => e.Kind == "LWPOLYLINE");
        }
    }

    /// <summary>Every polyline's vertices, whichever way the version writes them.</summary>
    public List<(bool Closed, List<(double X, double Y)> Points)> Lines()
    {
        var lines = new List<(bool, List<(double, double)>)>();
        foreach (DxfObject entity in Entities)
        {
            if (entity.Kind is "LWPOLYLINE" or "POLYLINE")
            {
                lines.Add(
                    (entity.First(70) == "1", entity.Kind == "LWPOLYLINE" ? entity.Points() : [])
                );
            }
            else if (entity.Kind == "VERTEX")
            {
                lines[^1].Item2.AddRange(entity.Points());
            }
        }

        return lines;
    }

    private void Outlines()
    {
        foreach (DxfObject? entity in Entities.Where(e => e.Kind == "LWPOLYLINE"))
        {
            Assert.Equal(entity.First(90), $"{entity.Points().Count}");
        }

        foreach ((bool closed, List<(double X, double Y)>? points) in Lines())
        {
            Assert.True(points.Distinct().Count() >= 2);
            for (int i = closed ? 0 : 1; i < points.Count; i++)
            {
                Assert.NotEqual(points[(i + points.Count - 1) % points.Count], points[i]);
            }
        }
    }

    private void Handles()
    {
        int seed = Hex(Header("$HANDSEED"));
        var handles = new HashSet<int>();
        foreach (DxfObject? o in objects.Where(o => o.Section != "HEADER" && o.Handle is not null))
        {
            Assert.True(handles.Add(Hex(o.Handle!)), $"handle {o.Handle} is used twice");
            Assert.True(Hex(o.Handle!) < seed, $"handle {o.Handle} is not below the seed");
        }

        foreach (DxfObject? o in objects.Where(o => o.Section != "HEADER" && o.Handle is not null))
        {
            foreach ((int code, string? value) in o.Groups.Where(g => g.Code is 330 or 340 or 350))
            {
                Assert.True(value == "0" || handles.Contains(Hex(value)), $"{code} {value}");
            }
        }

        DxfObject model = objects.Single(o =>
            o.Kind == "BLOCK_RECORD" && o.First(2) == "*MODEL_SPACE"
        );
        Assert.All(Entities, e => Assert.Equal(model.Handle, e.First(330)));
        Assert.All(Entities, e => Assert.NotNull(e.Handle));
        DxfObject? table = null;
        foreach (DxfObject? o in objects.Where(o => o.Section == "TABLES"))
        {
            table = o.Kind == "TABLE" ? o : table;
            if (o.Kind is not ("TABLE" or "ENDTAB" or "SECTION" or "ENDSEC"))
            {
                Assert.Equal(table!.Handle, o.First(330));
            }
        }
    }

    private void TablesCountTheirRecords()
    {
        for (int i = 0; i < objects.Count; i++)
        {
            if (objects[i].Kind == "TABLE")
            {
                int end = objects.FindIndex(i, o => o.Kind == "ENDTAB");
                Assert.Equal(objects[i].First(70), $"{end - i - 1}");
                Assert.All(objects[(i + 1)..end], o => Assert.Equal(objects[i].First(2), o.Kind));
            }
        }
    }

    private void NumbersAreNumbers()
    {
        foreach ((int code, string? value) in groups)
        {
            if (code is (>= 10 and < 60) or (>= 140 and < 150))
            {
                Assert.True(double.IsFinite(Number(value)), $"{code} {value}");
                Assert.NotEqual("-0", value);
            }
        }
    }

    private List<string?> Names(string table) =>
        [.. objects.Where(o => o.Kind == table).Select(o => o.First(2))];

    private static int Hex(string text) => Convert.ToInt32(text, 16);

    private static double Number(string text) =>
        double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    internal sealed record DxfObject(
        string Section,
        string Kind,
        List<(int Code, string Value)> Groups
    )
    {
        public string? Handle => First(Kind == "DIMSTYLE" ? 105 : 5);

        public string? First(int code)
        {
            int at = Groups.FindIndex(g => g.Code == code);
            return at < 0 ? null : Groups[at].Value;
        }

        public List<(double X, double Y)> Points() =>
            [
                .. Groups
                    .Where(g => g.Code == 10)
                    .Zip(Groups.Where(g => g.Code == 20))
                    .Select(p => (Number(p.First.Value), Number(p.Second.Value))),
            ];
    }
}
