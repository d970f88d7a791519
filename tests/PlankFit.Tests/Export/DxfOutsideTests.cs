using System.Globalization;
using System.Text.RegularExpressions;
using PlankFit.Draughting.Dxf;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Export;

/// <summary>What other people's readers make of our files.</summary>
public partial class DxfOutsideTests
{
    private const string Audit = """
        import sys
        try:
            import ezdxf
        except ImportError:
            print("MISSING")
            sys.exit(0)
        for name in sys.argv[1:]:
            document = ezdxf.readfile(name)
            audit = document.audit()
            kinds = {}
            for entity in document.modelspace():
                kind = entity.dxftype()
                kinds[kind] = kinds.get(kind, 0) + 1
            print(len(audit.errors), len(audit.fixes), document.units, sorted(kinds.items()))
        """;

    public static TheoryData<DxfVersion, DxfUnit> Kinds => DxfWriterTests.Kinds;

    [Theory]
    [MemberData(nameof(Kinds))]
    public void EzdxfFindsNothingToMendAndEveryEntity(DxfVersion version, DxfUnit units)
    {
        using var folder = new TempFolder();
        string file = Written(folder, version, units);
        string read = OutsideTool
            .Run("/usr/bin/python3", "python3 python3-ezdxf", "-c", Audit, file)
            .Trim();
        Assert.SkipWhen(read == "MISSING", "ezdxf is not installed: apt-get install python3-ezdxf");
        string line = version == DxfVersion.R12 ? "POLYLINE" : "LWPOLYLINE";
        string kinds = $"[('CIRCLE', 3), ('{line}', 4), ('TEXT', 5)]";
        Assert.Equal($"0 0 {(units == DxfUnit.Inch ? 1 : 4)} {kinds}", read);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void GdalReadsTheVerticesThatWereDrawn(DxfVersion version, DxfUnit units)
    {
        using var folder = new TempFolder();
        string file = Written(folder, version, units);
        string text = OutsideTool.Run("ogrinfo", "gdal-bin", "-ro", "-al", "-q", file);
        var read = Wkt()
            .Matches(text)
            .Select(m => m.Groups[1].Value.Split(',').Select(Point).ToList())
            .ToList();
        double scale = units == DxfUnit.Inch ? 25.4 : 1;
        foreach (Polyline line in SampleDrawings.Everything.Shapes.OfType<Polyline>())
        {
            Assert.Contains(
                read,
                r =>
                    r.Count == line.Points.Length + (line.Closed ? 1 : 0)
                    && line.Points.Zip(r)
                        .All(p =>
                            Math.Abs(p.First.X - (scale * p.Second.X)) < 0.001
                            && Math.Abs(p.First.Y - (scale * p.Second.Y)) < 0.001
                        )
            );
        }

        Assert.Contains("Layer (String) = CUT", text, StringComparison.Ordinal);
        Assert.Contains("Text (String) = HEADS AFT", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void LibreCadDrawsIt(DxfVersion version, DxfUnit units)
    {
        using var folder = new TempFolder();
        string file = Written(folder, version, units);
        OutsideTool.Run("librecad", "librecad", "dxf2pdf", "-a", "-t", folder.Path, file);
        Assert.True(new FileInfo(folder.File("sample.pdf")).Length > 2000);
    }

    private static string Written(TempFolder folder, DxfVersion version, DxfUnit units)
    {
        string file = folder.File("sample.dxf");
        using FileStream stream = File.Create(file);
        DxfWriter.Write(stream, SampleDrawings.Everything, new DxfOptions(version, units));
        return file;
    }

    private static (double X, double Y) Point(string text)
    {
        string[] parts = text.Trim().Split(' ');
        return (
            double.Parse(parts[0], CultureInfo.InvariantCulture),
            double.Parse(parts[1], CultureInfo.InvariantCulture)
        );
    }

    [GeneratedRegex(@"LINESTRING(?: Z)? \(([^)]*)\)")]
    private static partial Regex Wkt();
}
