using System.Collections.Immutable;
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
        GapMm = 6,
        RoomyMm = 8;

    /// <summary>A stretch of a roll between two cuts straight across.</summary>
    private sealed record Row(
        RollPlan Plan,
        CutRoll Roll,
        double FromMm,
        double ToMm,
        ImmutableArray<PieceOnRoll> Pieces
    );

    public static IEnumerable<SheetPage> Pages(BottomPlan plan, SheathingPlan sheathing)
    {
        Row[] rows = [.. SheathingTables.Rolls(sheathing).SelectMany(r => Rows(r.Plan, r.Roll))];
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
        double TakesMm(Row row) => HeadMm + (row.Plan.RollWidthMm * ratio.Factor) + FootMm + GapMm;
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

            Row[] mine = rows[from..at];
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

                    foreach (Row row in mine)
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
            sheathing.Layers.Select(l => $"{SheathingWords.Of(l)}: {SheathingWords.FaceUp(l)}")
        );
        return $"Unroll it on a clean floor, {faces}. Thick lines are cut, dashed lines are where it is trimmed on the boat, the chain is the line that is laid first; {(sheathing.Pieces.Any(p => !p.Darts.IsEmpty) ? "a thick line in from the edge is a dart, cut to its tip if the piece will not lie without; " : "")}laps are on them and {LengthText.ForPaper(sheathing.Layers.Max(l => l.Spec.ExcessMm), unit)} at most all round to pull on. Threads run as the roll has them: do not turn a piece otherwise than it is drawn. What is left over is rolled, never folded, with its name and an arrow along the roll.";
    }

    /// <summary>Pieces that reach over each other's ends stay together; stretches are put in one row while they are no longer than the longest.</summary>
    private static IEnumerable<Row> Rows(RollPlan plan, CutRoll roll)
    {
        const double apartMm = 1e-6;
        List<(double From, double To, List<PieceOnRoll> Has)> stretches = [];
        foreach (PieceOnRoll piece in roll.Pieces.OrderBy(p => p.FromMm))
        {
            if (stretches.Count > 0 && piece.FromMm < stretches[^1].To - apartMm)
            {
                (double f, double t, List<PieceOnRoll> has) = stretches[^1];
                has.Add(piece);
                stretches[^1] = (f, Math.Max(t, piece.ToMm), has);
            }
            else
            {
                stretches.Add((piece.FromMm, piece.ToMm, [piece]));
            }
        }

        double longest = stretches.Max(s => s.To - s.From);
        List<(double From, double To, List<PieceOnRoll> Has)> now = [];
        foreach ((double From, double To, List<PieceOnRoll> Has) s in stretches)
        {
            if (now.Count > 0 && s.To - now[0].From > longest + apartMm)
            {
                yield return Made();
                now.Clear();
            }

            now.Add(s);
        }

        if (now.Count > 0)
        {
            yield return Made();
        }

        Row Made() => new(plan, roll, now[0].From, now[^1].To, [.. now.SelectMany(s => s.Has)]);
    }

    private static void Draw(
        SheetCanvas pad,
        Row row,
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
            First(pad, piece, row.Plan.RollWidthMm, At);
        }

        foreach (PieceOnRoll piece in row.Pieces)
        {
            Name(pad, piece, [.. piece.Outline.Select(At)], inside);
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
            Arrow(pad, piece, [.. piece.Outline.Select(At)]);
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

    /// <summary>The first line over the piece, and its cross.</summary>
    private static void First(
        SheetCanvas pad,
        PieceOnRoll piece,
        double rollMm,
        Func<Vec2, Vec2> at
    )
    {
        const double armMm = 60;
        Vec2 cross = piece.OnRoll(piece.Piece.Cross),
            along = piece.Piece.FirstAlongRoll ? new(1, 0) : new(0, 1);
        if (Inside(piece.Outline, cross, along) is not { } run)
        {
            return;
        }

        pad.Open(
            [at(cross + (run.From * along)), at(cross + (run.To * along))],
            Pens.BehindCentre,
            Layers.Behind
        );
        if (run.From < 0 && run.To > 0)
        {
            Vec2 arm = armMm * along.Left();
            // Not past the roll's edges, below which figures stand.
            pad.Open(
                new[] { cross - arm, cross + arm }.Select(p =>
                    at(new(p.X, Math.Clamp(p.Y, 0, rollMm)))
                ),
                Pens.Tick,
                Layers.Behind
            );
        }
    }

    /// <summary>From where to where a line lies in an outline, from its first crossing to its last; null where it does not come in.</summary>
    private static (double From, double To)? Inside(
        ImmutableArray<Vec2> outline,
        Vec2 through,
        Vec2 along
    )
    {
        double from = double.PositiveInfinity,
            to = double.NegativeInfinity;
        for (int i = 0; i < outline.Length; i++)
        {
            Vec2 a = outline[i] - through,
                b = outline[(i + 1) % outline.Length] - through;
            double offA = along.Cross(a),
                offB = along.Cross(b);
            if (offA * offB < 0)
            {
                double at = along.Dot(a + (offA / (offA - offB) * (b - a)));
                from = Math.Min(from, at);
                to = Math.Max(to, at);
            }
        }

        return to > from ? (from, to) : null;
    }

    private static void Name(SheetCanvas pad, PieceOnRoll piece, Vec2[] outline, Box inside)
    {
        Vec2 middle = Interior.DeepestPoint([.. outline], out double room);
        string lies = SheathingWords.Lies(piece),
            name = lies == "as drawn" ? piece.Piece.Id : $"{piece.Piece.Id}, {lies}";
        if (room <= RoomyMm)
        {
            // No room for an arrow: it is said.
            name += $", bow {SheathingWords.Bow(piece)}";
        }

        double size = Math.Clamp(room / 2, Letters.Small, Letters.Name);
        pad.TextAtFirst(
            from text in new[] { name, piece.Piece.Id }
            from height in new[] { size, Letters.Small }
            select new Lettering(
                Layers.Text,
                Pen.Thin,
                middle,
                text,
                height,
                Anchor.MiddleCentre,
                0,
                true
            ),
            inside
        );
    }

    /// <summary>Below the name, upright or lying; where another's name would be struck, none: the list of pieces has it.</summary>
    private static void Arrow(SheetCanvas pad, PieceOnRoll piece, Vec2[] outline)
    {
        const double head = 0.13;
        Vec2 middle = Interior.DeepestPoint([.. outline], out double room);
        if (room <= RoomyMm)
        {
            return;
        }

        Vec2 bow = SheathingWords.BowOnRoll(piece);
        double size = Math.Clamp(room / 2, Letters.Small, Letters.Name),
            length = Math.Min(12, 0.7 * room),
            down =
                // What hangs below the line is kept clear as well.
                (0.8 * size)
                + 1
                + (Math.Abs(bow.Y) * length / 2)
                + (Math.Abs(bow.X) * head * length);
        Vec2 at = middle - new Vec2(0, down);
        CircleShape[] taken =
        [
            .. new[] { -0.4, -0.2, 0, 0.2, 0.4 }.Select(part => new CircleShape(
                Layers.Marks,
                Pens.None,
                at + (part * length * bow),
                head * length,
                0
            )),
        ];
        if (pad.Letterings.All(l => FreePlace.IsFree(l, taken)))
        {
            ForwardArrow.Draw(pad, at, bow, length);
        }
    }

    private static IEnumerable<Vec2> Closed(IEnumerable<Vec2> points)
    {
        Vec2[] all = [.. points];
        return all.Length == 0 ? all : all.Append(all[0]);
    }
}
