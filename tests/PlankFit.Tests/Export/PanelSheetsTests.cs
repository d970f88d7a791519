using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using PlankFit.Draughting.Dxf;
using PlankFit.Draughting.Skia;
using PlankFit.Export.Panels;
using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Panels;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;
using UglyToad.PdfPig;

namespace PlankFit.Tests.Export;

/// <summary>The developed bottom on paper and as DXF, on all the demo hulls.</summary>
public sealed class PanelSheetsTests
{
    public static TheoryData<string> Hulls => [.. DemoTables.All.Select(d => d.Hull)];

    private static readonly ConcurrentDictionary<string, Lazy<PanelPlan>> Developed = new();

    private static (Job Job, PanelPlan Panel, BottomPlan Plan) Develop(string hull)
    {
        BottomPlan plan = DemoPlans.Of(hull);
        Lazy<PanelPlan> panel = Developed.GetOrAdd(
            hull,
            _ => new(() => BottomPanel.Develop(plan.Planked, PanelOptions.Usual))
        );
        return (plan.Job, panel.Value, plan);
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void EveryLineAndLetterLiesOnTheSheetAndNoLettersMeet(string hull)
    {
        (_, PanelPlan panel, BottomPlan plan) = Develop(hull);
        foreach (Drawing page in PanelSheets.Pages(plan, panel))
        {
            List<(double L, double B, double R, double T, string Text)> boxes = [];
            foreach (Lettering l in page.Shapes.OfType<Lettering>())
            {
                double width = LetterWidths.TextWidth(l.Text, l.HeightMm, l.Bold),
                    left = l.Anchor switch
                    {
                        Anchor.BaselineCentre or Anchor.MiddleCentre => l.At.X - (width / 2),
                        Anchor.BaselineRight or Anchor.MiddleRight => l.At.X - width,
                        _ => l.At.X,
                    },
                    bottom = l.Anchor
                        is Anchor.MiddleLeft
                            or Anchor.MiddleCentre
                            or Anchor.MiddleRight
                        ? l.At.Y - (l.HeightMm / 2)
                        : l.At.Y;
                Assert.True(l.HeightMm >= 1.8, l.Text);
                Assert.InRange(left, 8, page.WidthMm - 8 - width);
                Assert.InRange(bottom, 8, page.HeightMm - 8 - l.HeightMm);
                boxes.Add((left, bottom, left + width, bottom + l.HeightMm, l.Text));
            }

            for (int i = 0; i < boxes.Count; i++)
            {
                for (int j = 0; j < i; j++)
                {
                    (
                        (double L, double B, double R, double T, string Text) a,
                        (double L, double B, double R, double T, string Text) b
                    ) = (boxes[i], boxes[j]);
                    bool meet = a.L < b.R && b.L < a.R && a.B < b.T && b.B < a.T;
                    Assert.False(meet, $"{page.Title}: \"{a.Text}\" and \"{b.Text}\"");
                }
            }

            Assert.All(
                page.Shapes.OfType<Polyline>().SelectMany(p => p.Points),
                p =>
                    Assert.True(p.X >= 0 && p.Y >= 0 && p.X <= page.WidthMm && p.Y <= page.HeightMm)
            );
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void ThePageSaysTheVerdictTheLargestStrainAndBothEdges(string hull)
    {
        (Job job, PanelPlan panel, BottomPlan plan) = Develop(hull);
        using MemoryStream pdf = new();
        PdfWriter.Write(
            pdf,
            PanelSheets.Pages(plan, panel),
            "panel",
            TestContext.Current.CancellationToken
        );
        using var read = PdfDocument.Open(pdf.ToArray());
        string text = Regex.Replace(read.GetPage(1).Text, @"\s", "");
        Assert.Contains("NOTDEVELOPABLE", text, StringComparison.Ordinal);
        Assert.Contains("Largeststrain", text, StringComparison.Ordinal);
        Assert.Contains(job.Revision, text, StringComparison.Ordinal);
        foreach (EdgeLength edge in (EdgeLength[])[panel.Flat.LowerEdge, panel.Flat.UpperEdge])
        {
            string shown = Regex.Replace(LengthText.ForPaper(edge.SurfaceMm, job.Units), @"\s", "");
            Assert.Contains(shown, text, StringComparison.Ordinal);
        }

        // All stations by name, in the table.
        Assert.All(panel.Stations, s => Assert.Contains(s.Name, text, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void FullSizeDxfHoldsTheOutlineToAHundredthAndEverySeam(string hull)
    {
        (Job job, PanelPlan panel, BottomPlan plan) = Develop(hull);
        Drawing full = PanelFullSize.Of(job, panel);
        using TempFolder folder = new();
        string file = Path.Combine(folder.Path, "panel.dxf");
        using (FileStream stream = File.Create(file))
        {
            DxfWriter.Write(stream, full, DxfOptions.Default);
        }

        new DxfReading(File.ReadAllBytes(file)).HoldToTheRules();
        const string script = """
            import sys
            try:
                import ezdxf
            except ImportError:
                print("MISSING")
                sys.exit(0)
            d = ezdxf.readfile(sys.argv[1])
            a = d.audit()
            layers = {}
            for e in d.modelspace().query("LWPOLYLINE"):
                layers.setdefault(e.dxf.layer, []).append(e)
            cut = layers["CUT"][0]
            print(len(a.errors), len(a.fixes), len(layers["CUT"]), cut.closed, sum(len(v) for k, v in layers.items() if k.startswith("SEAMS")))
            for x, y in cut.vertices():
                print(repr(x), repr(y))
            """;
        string[] read = OutsideTool
            .Run("/usr/bin/python3", "python3 python3-ezdxf", "-c", script, file)
            .Trim()
            .Split('\n');
        Assert.SkipWhen(
            read[0] == "MISSING",
            "ezdxf is not installed: apt-get install python3-ezdxf"
        );
        int seams = plan.PlankLayers.Sum(l => l.Starboard.Length - 1);
        Assert.Equal($"0 0 1 True {seams}", read[0]);
        Vec2[] drawn = [.. read[1..].Select(Vertex)];
        Vec2[] flat = [.. panel.Flat.Outline];
        Vec2 corner = new(20 - flat.Min(v => v.X), 20 - flat.Min(v => v.Y));
        Vec2[] moved = [.. flat.Select(v => v + corner)];
        Assert.All(drawn, d => Assert.InRange(moved.Min(v => v.ChordTo(d)), 0, 1e-3));
        Assert.All(moved, v => Assert.InRange(Off(v), 0, 0.008));

        double Off(Vec2 v) =>
            Enumerable
                .Range(0, drawn.Length)
                .Min(i =>
                {
                    Vec2 a = drawn[i],
                        run = drawn[(i + 1) % drawn.Length] - a;
                    double part = Math.Clamp((v - a).Dot(run) / run.Dot(run), 0, 1);
                    return v.ChordTo(a + (part * run));
                });

        static Vec2 Vertex(string line)
        {
            string[] parts = line.Split(' ');
            return new(
                double.Parse(parts[0], System.Globalization.CultureInfo.InvariantCulture),
                double.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture)
            );
        }
    }

    [Theory]
    [MemberData(nameof(Hulls))]
    public void SeamsKeepTheLengthThatTheyHaveOnTheHullWithinTheStrain(string hull)
    {
        (_, PanelPlan panel, BottomPlan plan) = Develop(hull);
        double most = Math.Abs(panel.Flat.Worst.Leading) + panel.Flat.Accuracy.Strain + 1e-6;
        foreach (PanelSeams layer in panel.Layers)
        {
            PlankLayerPlan planks = plan.PlankLayers.Single(l => l.Number == layer.Layer);
            foreach (PanelSeam seam in layer.Seams)
            {
                Vec2[] laid = [.. FlatLines.Along(panel.Flat.Map, seam.Line)];
                Vec3[] there = [.. seam.Line.Select(x => panel.Flat.Patch.Surface.At(x.U, x.V).P)];
                PlankEdge edge = planks.Starboard.Single(p => p.Id == seam.Forward).AfterEdge;
                Assert.Equal(edge.Seam.Length, laid.Length);
                double onHull = 0,
                    flat = 0;
                for (int k = 0; k < laid.Length; k++)
                {
                    // Each point straight under (or over) its own on the layer's mid-surface.
                    Assert.Equal(
                        Math.Abs(planks.NeutralOffsetMm),
                        there[k].ChordTo(edge.Seam[k]),
                        0.01
                    );
                    onHull += k > 0 ? there[k - 1].ChordTo(there[k]) : 0;
                    flat += k > 0 ? laid[k - 1].ChordTo(laid[k]) : 0;
                }

                Assert.InRange(flat / onHull, 1 - most, 1 + most);
            }
        }
    }
}
