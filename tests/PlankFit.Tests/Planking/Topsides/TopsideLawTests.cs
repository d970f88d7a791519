using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using PlankFit.Tests.Support.Chance;

namespace PlankFit.Tests.Planking.Topsides;

/// <summary>What must hold for the planks of every topside, on hulls by chance in every unit.</summary>
public sealed class TopsideLawTests
{
    /// <summary>The laws of bottoms: planks cover their layer once, neighbours touch, flat shapes are true to the surface, what is sawn holds both faces.</summary>
    [Fact]
    public void TopsidesByChanceKeepEveryLaw()
    {
        int planned = 0,
            refused = 0;
        for (int seed = 0; seed < LongRuns.Of(3, 240); seed++)
        {
            if (Planned(seed) is not { } plan)
            {
                refused++;
                continue;
            }

            planned++;
            BottomPlan topside = Assert.Single(plan.Others);
            string[] broken =
            [
                .. BottomLaws.Broken(topside),
                .. EndsOffTheirLines(topside),
                .. PlanksNotFound(plan, topside),
            ];
            Assert.True(broken.Length == 0, $"seed {seed}: " + string.Join("\n", broken.Take(8)));
        }

        Shares.AtLeast(0.75, planned, planned + refused);
    }

    /// <summary>The chine is one curve on bottom and topside.</summary>
    [Fact]
    public void NoSeamGapesAtTheChine()
    {
        int planned = 0;
        for (int seed = 0; seed < 3; seed++)
        {
            if (Planned(seed) is { } plan)
            {
                planned++;
                (LoftedSurface below, LoftedSurface above) = (
                    plan.Hull.Surface,
                    plan.Others[0].Hull.Surface
                );
                for (int i = 0; i <= 100; i++)
                {
                    double u = above.UFrom + ((above.UTo - above.UFrom) * i / 100);
                    Vec3 chine = below.At(u, below.UpperV(u)).P;
                    Assert.InRange(chine.ChordTo(above.At(u, 0).P), 0, 1e-6);
                }
            }
        }

        Assert.InRange(planned, 2, 3);
    }

    private static BottomPlan? Planned(int seed)
    {
        (string job, string offsets) = ChanceTopside.Of(seed);
        ReadResult read = JobReader.Read(job, "job.toml", offsets, "offsets.csv");
        Assert.True(
            read.Job is not null,
            $"seed {seed}: {string.Join("\n", read.Findings.Select(f => f.Where + ": " + f.Message))}\n{job}"
        );
        PlanResult result = BottomPlanner.Plan(
            read.Job!,
            null,
            TestContext.Current.CancellationToken
        );
        Assert.True(
            result.Plan is not null
                || result.Findings.Any(f => f.Severity == Severity.Error && f.Message.Length > 20)
        );
        return result.Plan;
    }

    /// <summary>Ends at chine and sheer lie on the normals through the table's lines, within 0.01 mm, and at the layer's distance from them.</summary>
    private static IEnumerable<string> EndsOffTheirLines(BottomPlan topside)
    {
        LoftedSurface table = topside.Hull.Surface;
        foreach (PlankLayerPlan layer in topside.PlankLayers)
        {
            foreach (Plank plank in layer.Starboard)
            {
                foreach (
                    PlankEnd end in plank.Ends.Where(e =>
                        e.At is PanelEdge.Lower or PanelEdge.Upper
                    )
                )
                {
                    double v = end.At == PanelEdge.Lower ? 0 : 1;
                    foreach (Vec3 p in new[] { end.Outline[0], end.Outline[^1] })
                    {
                        double off = OffTheLine(topside.Hull, p, v, layer.NeutralOffsetMm);
                        if (!(off < 0.01))
                        {
                            yield return $"{plank.Id}: its end at the {end.Word} lies {off} mm off the line";
                        }
                    }
                }
            }
        }
    }

    /// <summary>The least distance of a place from the line carried out along the normals, by golden section over the line, no search on the surface.</summary>
    private static double OffTheLine(HullSurface hull, Vec3 p, double part, double offsetMm)
    {
        LoftedSurface table = hull.Surface;
        double Distance(double u)
        {
            SurfacePoint at = table.At(u, part * table.UpperV(u));
            return (at.P + (offsetMm * at.Normal)).ChordTo(p);
        }

        const int looks = 400;
        double step = (table.UTo - table.UFrom) / looks,
            near = Enumerable
                .Range(0, looks + 1)
                .Select(i => table.UFrom + (i * step))
                .MinBy(Distance),
            a = Math.Max(table.UFrom, near - step),
            b = Math.Min(table.UTo, near + step),
            ratio = (Math.Sqrt(5) - 1) / 2;
        while (b - a > 1e-7)
        {
            double c = b - (ratio * (b - a)),
                d = a + (ratio * (b - a));
            (a, b) = Distance(c) < Distance(d) ? (a, d) : (c, b);
        }

        return Distance((a + b) / 2);
    }

    /// <summary>Every plank is found by its name from the whole plan, and no name stands twice.</summary>
    private static IEnumerable<string> PlanksNotFound(BottomPlan plan, BottomPlan topside)
    {
        Plank[] all = [.. topside.PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))];
        return all.Where(p => plan.Find(p.Id.ToString()) != p || p.Id.Panel != "T")
            .Select(p => $"{p.Id} is not found")
            .Concat(
                plan.AllPlankLayers.SelectMany(l => l.Layer.Starboard.Concat(l.Layer.Port))
                    .GroupBy(p => p.Id)
                    .Where(g => g.Count() > 1)
                    .Select(g => $"{g.Key} stands twice")
            );
    }
}
