using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Sheathing;

/// <summary>The rolls to scale with the pieces as they are cut from them, stretch under stretch.</summary>
internal static class RollSheets
{
    private const double HeadMm = 7,
        FootMm = 9,
        GapMm = 6;

    public static IEnumerable<SheetPage> Pages(BottomPlan plan, SheathingPlan sheathing)
    {
        RollStretch[] rows =
        [
            .. SheathingTables.Rolls(sheathing).SelectMany(r => RollStretch.Of(r.Plan, r.Roll)),
        ];
        if (rows.Length == 0)
        {
            yield break;
        }

        LengthUnit unit = plan.Job.Units;
        var format = SheetFormat.Wall(plan.Job);
        Box inside = Frame.Inside(format).Within(6);
        string intro = Intro(sheathing, unit);
        double words =
            (
                Letters.Wrap(intro, Letters.Bench, inside.Width).Count
                * Letters.Bench
                * Letters.Leading
            ) + GapMm;
        double longest = rows.Max(r => r.ToMm - r.FromMm),
            widest = rows.Max(r => r.Plan.RollWidthMm);
        var ratio = Ratio.Fitting(
            new(0, 0, longest, widest),
            inside.Width - 4,
            inside.Height - words - HeadMm - FootMm,
            unit
        );
        double TakesMm(RollStretch row) =>
            HeadMm + (row.Plan.RollWidthMm * ratio.Factor) + FootMm + GapMm;
        int at = 0;
        while (at < rows.Length)
        {
            bool first = at == 0;
            double room = inside.Height - (first ? words : 0);
            int from = at;
            while (at < rows.Length && (at == from || room - TakesMm(rows[at]) >= -GapMm))
            {
                room -= TakesMm(rows[at++]);
            }

            RollStretch[] mine = rows[from..at];
            yield return new(
                format,
                new(
                    "Cloth: the rolls and what is cut from them",
                    "as it lies on the boat, seen from outside, unless a piece says otherwise",
                    "scale " + ratio,
                    null,
                    Cautions.Cloth
                )
                {
                    Arrow = "bow: the arrow on each piece",
                },
                (pad, _) =>
                {
                    double top = inside.Top;
                    if (first)
                    {
                        pad.Paragraph(inside.Left, top, inside.Width, intro, Letters.Bench);
                        top -= words;
                    }

                    foreach (RollStretch row in mine)
                    {
                        Draw(pad, row, inside, top, ratio.Factor, unit);
                        top -= TakesMm(row);
                    }
                }
            )
            {
                FoundBy =
                [
                    "The rolls of cloth",
                    string.Join(", ", mine.SelectMany(r => r.Pieces).Select(p => p.Piece.Id)),
                ],
            };
        }
    }

    private static string Intro(SheathingPlan sheathing, LengthUnit unit)
    {
        string faces = string.Join(
            "; ",
            sheathing.Rolls.Select(r => $"{r.Cloth.Name} with {SheathingWords.Unrolled(r)}")
        );
        return $"Unroll it on a clean floor, {faces}. {string.Concat(SheathingWords.FacesOnTheBoat(sheathing.Layers).Select(s => s + " "))}Thick lines are cut, dashed lines are where it is trimmed on the boat, the chain is the line that is laid first; {(sheathing.Pieces.Any(p => !p.Darts.IsEmpty) ? "a thick line in from the edge is a dart, cut to its tip if the piece will not lie without; " : "")}laps are on them and {LengthText.ForPaper(sheathing.Layers.Max(l => l.Spec.ExcessMm), unit)} at most all round to pull on. Threads run as the roll has them: do not turn a piece otherwise than it is drawn. What is left over is rolled, never folded, with its name and an arrow along the roll.";
    }

    private static void Draw(
        SheetCanvas pad,
        RollStretch row,
        Box inside,
        double top,
        double scale,
        LengthUnit unit
    )
    {
        double width = row.Plan.RollWidthMm * scale,
            foot = top - HeadMm - width,
            right = inside.Left + ((row.ToMm - row.FromMm) * scale);
        Vec2 At(Vec2 p) => new(inside.Left + ((p.X - row.FromMm) * scale), foot + (p.Y * scale));
        pad.Text(
            inside.Left,
            top - Letters.Heading,
            Letters.Shortened(
                $"{row.Plan.Cloth.Name}, {SheathingWords.Roll(row.Roll)}, {LengthText.ForPaper(row.Plan.RollWidthMm, unit)} wide: from {LengthText.ForPaper(row.FromMm, unit)} to {LengthText.ForPaper(row.ToMm, unit)} along it",
                Letters.Heading,
                inside.Width,
                true
            ),
            Letters.Heading,
            bold: true
        );
        pad.Closed(
            [
                new(inside.Left, foot),
                new(right, foot),
                new(right, foot + width),
                new(inside.Left, foot + width),
            ],
            Pens.Measure,
            Layers.Hull
        );
        foreach (PieceOnRoll piece in row.Pieces)
        {
            pad.Open(
                Closed(piece.Piece.Trim.Select(p => At(piece.OnRoll(p)))),
                Pens.Net,
                Layers.Net
            );
            pad.Closed(piece.Outline.Select(At), Pens.Cut, Layers.Cut);
        }

        foreach (PieceOnRoll piece in row.Pieces)
        {
            DartSheets.Draw(pad, piece, At, new(inside.Left, foot, right, foot + width));
            PieceMarks.First(pad, piece, row.Plan.RollWidthMm, At);
        }

        foreach (PieceOnRoll piece in row.Pieces)
        {
            PieceMarks.Name(pad, piece, [.. piece.Outline.Select(At)], inside);
        }

        foreach (
            ClothOffcut left in row.Roll.Offcuts.Where(o =>
                o.At.X >= row.FromMm - 1 && o.At.X + o.LengthMm <= row.ToMm + 1
            )
        )
        {
            Vec2 middle = At(left.At + new Vec2(left.LengthMm / 2, left.WidthMm / 2));
            string words =
                $"{left.Id}: {LengthText.ForPaper(left.LengthMm, unit)} by {LengthText.ForPaper(left.WidthMm, unit)} left";
            pad.TextAtFirst(
                [new(Layers.Text, Pen.Thin, middle, words, Letters.Bench, Anchor.MiddleCentre)],
                new(inside.Left, foot, right, foot + width)
            );
        }

        foreach (PieceOnRoll piece in row.Pieces)
        {
            PieceMarks.Arrow(pad, piece, [.. piece.Outline.Select(At)]);
        }

        pad.BreakAroundLetters(Layers.Net, Layers.Cut, Layers.Hull, Layers.Behind);
        double y = foot - 4;
        DimensionLine.Across(
            pad,
            inside.Left,
            right,
            y,
            LengthText.ForPaper(row.ToMm - row.FromMm, unit)
        );
    }

    private static IEnumerable<Vec2> Closed(IEnumerable<Vec2> points)
    {
        Vec2[] all = [.. points];
        return all.Length == 0 ? all : all.Append(all[0]);
    }
}
