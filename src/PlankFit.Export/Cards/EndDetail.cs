using PlankFit.Export.Sheets;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Cards;

/// <summary>One end of a plank drawn larger, its lines named in a column on the open side.</summary>
internal static class EndDetail
{
    private const double NamesMm = 19;

    public static void Draw(
        SheetCanvas pad,
        Box on,
        Plank plank,
        bool outboard,
        double thicknessMm,
        LengthUnit unit
    )
    {
        var cut = Box.Around(plank.FlatCut);
        PlankEnd[] here =
        [
            .. plank.Ends.Where(e =>
                EndReading.Of(plank, e, thicknessMm).FacesOutboard == outboard
            ),
        ];
        if (here.Length == 0)
        {
            return;
        }

        // The names stand outside the end: to the left of an inboard end, to the right of an outboard one.
        Box drawing = outboard
            ? on with
            {
                Right = on.Right - NamesMm,
            }
            : on with
            {
                Left = on.Left + NamesMm,
            };
        var ratio = Ratio.Fitting(
            new(0, cut.Bottom, Math.Min(cut.Width, 1.15 * cut.Height), cut.Top),
            drawing.Width - 2,
            drawing.Height - 6,
            unit
        );
        double shownMm = Math.Min(cut.Width, (drawing.Width - 1) * ratio.Of);
        Box window = outboard
            ? cut with
            {
                Left = cut.Right - shownMm,
            }
            : cut with
            {
                Right = cut.Left + shownMm,
            };
        var at = Placing.Centred(
            window,
            drawing with
            {
                Bottom = drawing.Bottom + 4,
            },
            ratio.Factor,
            ratio.Factor
        );
        var clip = Box.Around([
            at[new(window.Left, window.Bottom)],
            at[new(window.Right, window.Top)],
        ]);
        BuiltShape.Draw(pad, plank, at, clip.Within(-0.01), 2.5);
        pad.Text(
            new(outboard ? drawing.Right : drawing.Left, on.Bottom + 0.3),
            $"{(outboard ? Panel.OuterWordOf(plank.Id) : Panel.InnerWordOf(plank.Id))} end, {ratio}",
            Letters.Small,
            outboard ? Anchor.BaselineRight : Anchor.BaselineLeft
        );
        Names(pad, on, clip, at, here, outboard);
    }

    private static void Names(
        SheetCanvas pad,
        Box on,
        Box clip,
        Placing at,
        PlankEnd[] ends,
        bool outboard
    )
    {
        List<(string Name, Vec2 To)> names = [];
        foreach (PlankEnd end in ends)
        {
            string edge = ends.Length > 1 ? end.Word + ": " : "";
            bool apart =
                end.OuterLine.Length > 1
                && end.InnerLine.Length > 1
                && end.OuterLine[0].ChordTo(end.InnerLine[0]) > 0.5;
            if (apart)
            {
                Add($"{edge}outer face", end.OuterLine, 0.72);
                Add($"{edge}inner face", end.InnerLine, 0.28);
            }
            else
            {
                Add($"{edge}net end", end.NetLine, 0.5);
            }
        }

        names.Sort((a, b) => b.To.Y.CompareTo(a.To.Y));
        double step = Letters.Small * 2,
            y = Math.Min(on.Top - 2, names.Count == 0 ? 0 : names[0].To.Y);
        double x = outboard ? on.Right - NamesMm + 2.5 : on.Left + NamesMm - 2.5;
        foreach ((string name, Vec2 to) in names)
        {
            y = Math.Min(y, Math.Max(to.Y, on.Bottom + 6));
            string[] words = name.Split(": ");
            pad.Line(new(x, y), to, Pens.Measure);
            pad.Dot(to, 0.4);
            for (int i = 0; i < words.Length; i++)
            {
                pad.Text(
                    new(outboard ? x + 0.8 : x - 0.8, y - (i * step * 0.85)),
                    i < words.Length - 1 ? words[i] + ":" : words[i],
                    Letters.Small,
                    outboard ? Anchor.MiddleLeft : Anchor.MiddleRight
                );
            }

            y -= step * (words.Length > 1 ? 1.9 : 1);
        }

        void Add(string name, IReadOnlyList<Vec2> line, double part)
        {
            Vec2 target = at[Along(line, part)];
            if (clip.Holds(target))
            {
                names.Add((name, target));
            }
        }
    }

    private static Vec2 Along(IReadOnlyList<Vec2> line, double part)
    {
        double length = 0;
        for (int i = 1; i < line.Count; i++)
        {
            length += line[i].ChordTo(line[i - 1]);
        }

        double left = part * length;
        for (int i = 1; i < line.Count; i++)
        {
            double here = line[i].ChordTo(line[i - 1]);
            if (left <= here && here > 0)
            {
                return line[i - 1] + (left / here * (line[i] - line[i - 1]));
            }

            left -= here;
        }

        return line[^1];
    }
}
