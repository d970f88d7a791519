using System.Collections.Immutable;
using PlankFit.Draughting.Tiling;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.SettingUp;

/// <summary>
/// A frame in true size, starboard half, looking forward; one that port alone has to the other side of the middle line. For DXF the middle line is x = 0 and the base line y = 0 (up the rake where raked); for paper the same
/// moved onto its page. "cut" is the mould line on the face that stands on the line, "far face" the edge at the other face, "hull" the planking's faces and the table.
/// </summary>
public static class SectionDrawing
{
    private const double MarginMm = 12;
    private const double TextMm = 4.5;
    private const double LineMm = 1.7 * TextMm;
    private const double LeastWidthMm = 250;

    /// <summary>Words begin so far from the middle line: clear of it, and where a check square sees them.</summary>
    private const double IndentMm = 6;

    /// <summary>Room beside a name for the frame's own wood, mm.</summary>
    private const double InsideMm = 120;

    private const double TiledWordsMm = 150;
    private const string FarFace = "far face";

    /// <summary>In the hull's own coordinates.</summary>
    public static Drawing AtOrigin(Job job, SettingUpPlan plan, FrameSection section)
    {
        (SheetCanvas pad, Box box) = Drawn(job, plan, section);
        return pad.Done(Title(job, section), box.Width, box.Height);
    }

    /// <summary>With its lower left corner at the drawing's origin.</summary>
    public static Drawing OnPaper(Job job, SettingUpPlan plan, FrameSection section)
    {
        (SheetCanvas pad, Box box) = Drawn(job, plan, section);
        Vec2 move = new(-box.Left, -box.Bottom);
        return new(
            Title(job, section),
            box.Width,
            box.Height,
            [.. pad.Shapes.Select(s => Placed.By(s, move))]
        );
    }

    private static string Title(Job job, FrameSection section) =>
        $"{PlanWords.Headed(job)}: {SettingUpWords.Headed(section)}, full size";

    private static (SheetCanvas, Box) Drawn(Job job, SettingUpPlan plan, FrameSection section)
    {
        SectionLines lines = section.Lines;
        var wood = Box.Around([
            .. lines.Table,
            .. lines.Outer,
            .. lines.Inner,
            .. lines.Mould,
            .. lines.OtherFace,
            .. lines.PlankEnds.SelectMany(e => e),
            .. lines.Keel.SelectMany(k => k),
            .. lines.Corner is { } c
                ? c
                    .TopsideOuter.Concat(c.TopsideMould)
                    .Concat(c.TopsideInner)
                    .Concat(c.Joint)
                    .Concat(c.Piece)
                : [],
            new(0, lines.Table[0].Y),
        ]);
        double step = LengthUnits.IsMetric(job.Units) ? 100 : 6 * LengthUnits.MmPerInch,
            // A hull far above its base line gets a level nearer by.
            level = Math.Max(0, Math.Floor((wood.Bottom - 15) / step) * step);
        var pad = new SheetCanvas();
        Hull(pad, lines);
        pad.Open(lines.Mould, Pens.Mould, Layers.Cut);
        MouldName(pad, lines.Mould);
        pad.Open(lines.OtherFace, Pens.Inner, FarFace);
        double right = wood.Right + 20;
        string Mm(double mm) => LengthText.ForPaper(mm, job.Units);

        pad.Line(new(0, level - 5), new(0, wood.Top + 10), Pens.Station);
        Level(
            pad,
            level,
            right,
            level == 0 ? "base line" : $"level, {Mm(level)} above base",
            lines.Table
        );
        foreach (double z in plan.Spec.WaterlinesMm.Where(z => z > wood.Bottom && z < wood.Top + 5))
        {
            double rake = Math.Cos(section.RakeDegrees * Math.PI / 180);
            Level(pad, z / rake, right, $"waterline {Mm(z)}", lines.Table);
        }

        Places(pad, section);
        double legend = wood.Top + 14;
        bool tiled = job.Output.Patterns == PatternPages.Tiled;
        // Words that a page of any paper holds, where the drawing is cut up.
        (string Text, bool Bold)[] words =
        [
            .. Words(job, plan, section)
                .SelectMany(
                    (w, i) =>
                        (
                            tiled
                                ? Letters.Wrap(
                                    LetterWidths.Drawable(w, i == 0),
                                    TextMm,
                                    TiledWordsMm,
                                    i == 0
                                )
                                : [LetterWidths.Drawable(w, i == 0)]
                        ).Select(l => (l, i == 0))
                ),
        ];
        for (int i = 0; i < words.Length; i++)
        {
            pad.Text(
                new(IndentMm, legend + ((words.Length - 1 - i) * LineMm)),
                words[i].Text,
                TextMm,
                bold: words[i].Bold
            );
        }

        double wide = words.Max(w => IndentMm + Letters.Width(w.Text, TextMm, w.Bold));
        Box box = new(
            -MarginMm,
            Math.Min(level, wood.Bottom - 6) - MarginMm - 8,
            Math.Max(Math.Max(right, wide) + MarginMm, LeastWidthMm),
            legend + (words.Length * LineMm) + MarginMm
        );
        if (section.Only != Side.Port)
        {
            return (pad, box);
        }

        // What port alone has is drawn as it stands there.
        var port = new SheetCanvas();
        port.Add(pad.Shapes.Select(PortHalf.Of));
        return (port, box with { Left = -box.Right, Right = -box.Left });
    }

    private static void Hull(SheetCanvas pad, SectionLines lines)
    {
        pad.Open(lines.Outer, Pens.Outer, Layers.Hull);
        pad.Open(lines.Inner, Pens.Outer, Layers.Hull);
        pad.Open(lines.Table, Pens.Net, Layers.Hull);
        foreach (ImmutableArray<Vec2> end in lines.PlankEnds.Concat(lines.Keel))
        {
            pad.Open(end, Pens.Outer, Layers.Hull);
        }

        if (lines.Corner is { } c)
        {
            pad.Open(c.Joint, Pens.Outer, Layers.Hull);
            pad.Open(c.TopsideOuter, Pens.Outer, Layers.Hull);
            pad.Open(c.TopsideInner, Pens.Outer, Layers.Hull);
            pad.Open(c.Round, Pens.Tick, Layers.Hull);
            pad.Open(c.TopsideMould, Pens.Mould, Layers.Cut);
            if (!c.Piece.IsEmpty)
            {
                pad.Closed(c.Piece, Pens.Outer, Layers.Hull);
            }
        }
    }

    /// <summary>A level line, named where the hull does not cross the name: inside it, or outside where it is narrow.</summary>
    private static void Level(
        SheetCanvas pad,
        double height,
        double right,
        string name,
        ImmutableArray<Vec2> table
    )
    {
        pad.Line(new(-5, height), new(right, height), Pens.Station);
        double crossed = table.FirstOrDefault(p => p.Y >= height, table[^1]).X;
        bool inside = height > table[0].Y && crossed > Letters.Width(name, TextMm) + InsideMm;
        pad.Text(
            new(inside ? IndentMm : right, height + (inside ? 2 : -TextMm - 2)),
            name,
            TextMm,
            inside ? Anchor.BaselineLeft : Anchor.BaselineRight
        );
    }

    /// <summary>Named on the line, along it and inside it, where the section is long enough to have room between its places.</summary>
    private static void MouldName(SheetCanvas pad, ImmutableArray<Vec2> mould)
    {
        const string name = "mould line: saw here";
        const double part = 0.37,
            awayMm = 9;
        double size = TextMm * 0.8;
        double run = Math.Abs(mould[^1].X - mould[0].X);
        if (run < 6 * Letters.Width(name, size))
        {
            return;
        }

        int i = Array.FindIndex([.. mould], p => Math.Abs(p.X - mould[0].X) >= part * run);
        Vec2 along = Along(mould, part);
        // Level words beside a line that slopes: their nearer end clears it as well.
        double away = awayMm + (Letters.Width(name, size) / 2 * Math.Abs(along.Y));
        pad.Text(mould[i] + (away * along.Left()), name, size, Anchor.MiddleCentre);
    }

    /// <summary>Strokes from the table's section in to the mould line at the places of the lists.</summary>
    private static void Places(SheetCanvas pad, FrameSection section)
    {
        foreach ((int i, FramePlace p) in section.Places.Index())
        {
            Vec2 run = Along(section.Lines.Table, p.Part),
                outward = -1 * run.Left();
            Vec2 drawn = p.Mould + (p.DeductionMm * outward);
            pad.Line(p.Mould, drawn + (4 * outward), Pens.Measure);
            pad.Text(
                drawn + (9 * outward),
                SettingUpWords.Place(section, i).Short,
                TextMm * 0.8,
                Anchor.MiddleCentre
            );
        }
    }

    /// <summary>The direction of a chain at about a part of its length.</summary>
    private static Vec2 Along(ImmutableArray<Vec2> line, double part)
    {
        double want = part * (line[^1].X - line[0].X);
        int i = 0;
        while (i < line.Length - 2 && line[i + 1].X - line[0].X < want)
        {
            i++;
        }

        return (line[i + 1] - line[i]).Unit();
    }

    private static ImmutableArray<string> Words(Job job, SettingUpPlan plan, FrameSection s)
    {
        string Mm(double mm) => LengthText.ForPaper(mm, job.Units);
        string At(int place, FramePlace p) =>
            $"{SettingUpWords.Place(s, place).Short}, {SettingUpWords.Place(s, place).Long}: deduct {Mm(p.DeductionMm)}, bevel {SettingUpWords.Bevel(p.BevelDegrees)}, fall {Mm(Math.Abs(p.FallMm))}";
        return
        [
            $"{SettingUpWords.Headed(s)}, {(s.Only == Side.Port ? "port" : "starboard")} half, looking forward, full size. {PlanWords.Headed(job, "rev")}",
            $"Thickest: mould line, to saw by, on the {SettingUpWords.Face(s.Face)} face, which stands on the line. Short dashes: edge at the other face, {Mm(s.ThicknessMm)} {SettingUpWords.Lies(s.Face)} it.",
            $"Planking's faces in thin full lines, the table's section in long dashes where it is neither of them{(plan.Spec.RibbandMm > 0 && !s.IsTransom ? $"; ribbands of {Mm(plan.Spec.RibbandMm)} between planking and mould" : "")}."
                + (
                    Math.Abs(s.RakeDegrees) < 0.01
                        ? ""
                        : $" Raked {AngleText.ForPaper(Math.Abs(s.RakeDegrees))}: heights run up the rake."
                ),
            At(0, s.Places[0]),
            At(2, s.Places[2]),
            At(4, s.Places[4]),
            "Measure the check square both ways first. Saw with care: guards on, eyes, ears and lungs protected. Sizes of frames are for local codes and a qualified person.",
        ];
    }
}
