using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Tables;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Sheathing;

/// <summary>Darts of pieces: where each is cut, and by how much it laps or opens.</summary>
public static class DartSheets
{
    /// <param name="Number">On its piece, from 1.</param>
    private sealed record Row(CutRoll Roll, PieceOnRoll Piece, ClothDart Dart, int Number)
    {
        /// <summary>Along from where the piece begins, and across from the roll's lower edge.</summary>
        public Vec2 Strike(Vec2 place) => Piece.OnRoll(place) - new Vec2(Piece.FromMm, 0);
    }

    private static IEnumerable<Row> Rows(SheathingPlan sheathing) =>
        from roll in SheathingTables.Rolls(sheathing)
        from piece in roll.Roll.Pieces
        from dart in piece.Piece.Darts.Select((d, i) => (Dart: d, Number: i + 1))
        select new Row(roll.Roll, piece, dart.Dart, dart.Number);

    internal static string Name(int number) => $"dart {NumberText.Trimmed(number, 0)}";

    /// <summary>laps 23.5 mm; opens 1/2".</summary>
    internal static string Does(ClothDart dart, LengthUnit unit) =>
        $"{(dart.Laps ? "laps" : "opens")} {LengthText.ForPaper(dart.WidthMm, unit)}";

    /// <summary>None where no piece has any.</summary>
    internal static IEnumerable<SheetPage> Pages(BottomPlan plan, SheathingPlan sheathing)
    {
        Row[] rows = [.. Rows(sheathing)];
        return rows.Length == 0 ? [] : List(plan.Job, rows).Pages(plan.Job);
    }

    private static ListSheet List(Job job, Row[] rows)
    {
        LengthUnit unit = job.Units;
        return new(
            new("Cloth: darts", "both sides", SheetWords.Unit(unit), null, Cautions.Cloth),
            [
                .. rows.Any(r => r.Dart.Crosses)
                    ? new[]
                    {
                        "A dart that is long enough goes on over several courses. Where it says through, its tip lies on another: it is cut from edge to edge, tip is then where it comes onto the piece, and it laps or opens there already. In a lap both courses are cut alike, one over the other.",
                    }
                    : [],
                "Lay the piece dry first: where it lies without one, cut none. A dart is a straight cut along a thread, from the edge of what is cut to its tip and no further. What laps there lies double, and the ridge is scraped when it has cured; what opens is patched with the same cloth, its threads the same way. Along the roll from where the piece begins, across from the roll's edge that the cutting sheet draws below.",
            ],
            [
                new("piece", 12, false),
                new("dart", 10, false),
                new("roll", 8),
                new("edge, along", 16),
                new("edge, across", 16),
                new("tip, along", 16),
                new("tip, across", 16),
                new("long", 14),
                new("at the edge it", 20, false),
                new("degrees", 10),
            ],
            [
                .. rows.Select(r =>
                    ImmutableArray.Create(
                        r.Piece.Piece.Id,
                        $"{NumberText.Trimmed(r.Number, 0)}{(r.Dart.Crosses ? " through" : "")}",
                        NumberText.Trimmed(r.Roll.Number, 0),
                        LengthText.PaperNumber(r.Strike(r.Dart.Mouth).X, unit),
                        LengthText.PaperNumber(r.Strike(r.Dart.Mouth).Y, unit),
                        LengthText.PaperNumber(r.Strike(r.Dart.Tip).X, unit),
                        LengthText.PaperNumber(r.Strike(r.Dart.Tip).Y, unit),
                        LengthText.PaperNumber(r.Dart.LengthMm, unit),
                        Does(r.Dart, unit),
                        NumberText.Padded(r.Dart.Degrees, 1)
                    )
                ),
            ]
        );
    }

    /// <summary>Cut to their tips, by which their names stand.</summary>
    internal static void Draw(SheetCanvas pad, PieceOnRoll piece, Func<Vec2, Vec2> at, Box roll)
    {
        const double besideMm = 2;
        for (int i = 0; i < piece.Piece.Darts.Length; i++)
        {
            ClothDart dart = piece.Piece.Darts[i];
            Vec2 tip = at(piece.OnRoll(dart.Tip)),
                mouth = at(piece.OnRoll(dart.Mouth)),
                ahead = (tip - mouth).Unit(),
                named = dart.Crosses ? 0.5 * (tip + mouth) : tip;
            pad.Open([mouth, tip], Pens.Cut, Layers.Cut);
            // The first place that no other's letters have; how much it laps or opens stands in the list.
            pad.TextAtFirst(
                from height in new[] { Letters.Bench, Letters.Small }
                from far in new[] { 1, 2, 3, 4 }
                from side in dart.Crosses ? [1, -1] : new[] { 0, 1, -1 }
                select new Lettering(
                    Layers.Text,
                    Pen.Thin,
                    named + (far * besideMm * ahead) + (2 * side * far * besideMm * ahead.Left()),
                    Name(i + 1),
                    height,
                    Anchor.MiddleCentre
                ),
                roll
            );
        }
    }

    public static Table Table(SheathingPlan sheathing) =>
        TableOf.Build<Row>(
            "cloth darts",
            [
                new("piece", 11, r => r.Piece.Piece.Id),
                new("dart", 6, r => r.Number),
                new("roll", 6, r => r.Roll.Number),
                new("edge along mm", 11, r => r.Strike(r.Dart.Mouth).X, 2),
                new("edge across mm", 11, r => r.Strike(r.Dart.Mouth).Y, 2),
                new("tip along mm", 11, r => r.Strike(r.Dart.Tip).X, 2),
                new("tip across mm", 11, r => r.Strike(r.Dart.Tip).Y, 2),
                new("long mm", 11, r => r.Dart.LengthMm, 2),
                new("from its tip mm", 13, r => r.Dart.FromTipMm, 2),
                new("wide mm", 11, r => r.Dart.WidthMm, 2),
                new("does", 9, r => r.Dart.Laps ? "laps" : "opens"),
                new("degrees", 9, r => r.Dart.Degrees, 3),
            ],
            Rows(sheathing)
        );
}
