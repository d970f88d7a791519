using System.Collections.Immutable;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Fastenings;

/// <summary>The lists of fastenings: every point of every plank, and what is to be bought.</summary>
public static class FasteningTables
{
    /// <summary>One row a point: where it is on the flat plank, and how to find it with a tape from the nearest long edge.</summary>
    public static Table Points(BottomPlan plan, FasteningPlan fastenings)
    {
        LengthUnit unit = plan.Job.Units;
        return TableOf.Build(
            "fastenings",
            [
                new("plank", 9, r => r.Plank.Id.ToString()),
                new("number", 8, r => r.Number),
                new("for", 12, r => FasteningWords.Use(r.Point.Use)),
                new("kind", 22, r => FasteningWords.What(r.Point.Use, r.Point.Kind, r.Point.Shape)),
                new("on", 18, r => r.Point.Backing),
                new(
                    "length",
                    10,
                    r => r.Point.LengthMm is { } l ? PlankWords.Small(l, unit) : null
                ),
                new("from edge", 10, r => r.Edge),
                new("along that edge", 14, r => Paper(r.AlongMm, unit)),
                new("in from it", 12, r => Paper(r.InMm, unit)),
                new("s mm", 10, r => r.Point.At.X, 2),
                new("n mm", 10, r => r.Point.At.Y, 2),
                new("along edge mm", 12, r => r.AlongMm, 2),
                new("in from edge mm", 12, r => r.InMm, 2),
                new("length mm", 10, r => r.Point.LengthMm, 2),
                new("taken out", 9, r => r.Point.IsTemporary ? "yes" : "no"),
            ],
            Rows(plan, fastenings)
        );
    }

    /// <summary>One row a layer, side, kind and length; none where no length that can be had will do.</summary>
    public static Table Totals(BottomPlan plan, FasteningPlan fastenings) =>
        TableOf.Build(
            "fastenings to buy",
            [
                new("layer", 7, (FasteningTotal t) => t.Layer),
                new("layer name", 14, t => LayerName(plan, t.Layer)),
                new("side", 10, t => PlankWords.Of(t.Side)),
                new("kind", 26, t => FasteningWords.What(t.Use, t.Kind, t.Shape)),
                new("name", 24, t => t.Name),
                new(
                    "length",
                    10,
                    t =>
                        t.Use == FasteningUse.Vent
                            ? null
                            : FasteningWords.Length(t.LengthMm, plan.Job.Units)
                ),
                new("count", 8, t => t.Count),
                new("with spare", 10, t => t.WithSpare),
                new("holes to fill", 10, t => t.HolesToFill),
                new("length mm", 10, t => t.LengthMm, 2),
            ],
            fastenings.Totals.Where(t => !t.HasNoLength)
        );

    internal static string LayerName(BottomPlan plan, int layer) =>
        plan.PlankLayers.First(l => l.Number == layer).Planks.Name;

    private static string? Paper(double? mm, LengthUnit unit) =>
        mm is { } length ? LengthText.ForPaper(length, unit) : null;

    private static IEnumerable<PointRow> Rows(BottomPlan plan, FasteningPlan fastenings) =>
        plan
            .PlankLayers.SelectMany(l => l.Starboard.Concat(l.Port))
            .SelectMany(p =>
                fastenings.On(p.Id)!.Points.Select((f, i) => PointRow.Of(p, f, i + 1))
            );

    /// <param name="AlongMm">From the inboard end of the net edge to square abreast of the point; null where the plank has no seam.</param>
    private sealed record PointRow(
        Plank Plank,
        Fastening Point,
        int Number,
        string? Edge,
        double? AlongMm,
        double? InMm
    )
    {
        public static PointRow Of(Plank plank, Fastening point, int number)
        {
            PointRow best = new(plank, point, number, null, null, null);
            foreach (
                (string name, PlankEdge edge) in new[]
                {
                    ("forward", plank.ForwardEdge),
                    ("after", plank.AfterEdge),
                }
            )
            {
                if (edge.Exists)
                {
                    (double along, double off) = Foot(edge.Flat, point.At);
                    best =
                        best.InMm is { } other && other <= off
                            ? best
                            : best with
                            {
                                Edge = name,
                                AlongMm = along,
                                InMm = off,
                            };
                }
            }

            return best;
        }

        private static (double Along, double Off) Foot(ImmutableArray<Vec2> line, Vec2 p)
        {
            (double Along, double Off) best = (0, double.PositiveInfinity);
            double before = 0;
            for (int i = 1; i < line.Length; i++)
            {
                Vec2 side = line[i] - line[i - 1];
                double length = side.Norm,
                    part = length > 0
                        ? Math.Clamp((p - line[i - 1]).Dot(side) / (length * length), 0, 1)
                        : 0,
                    off = p.ChordTo(line[i - 1] + (part * side));
                best = off < best.Off ? (before + (part * length), off) : best;
                before += length;
            }

            return best;
        }
    }
}
