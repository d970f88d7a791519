using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting;

/// <summary>Where a line of lettering stands, worked out once for all backends.</summary>
public static class LetteringPlace
{
    /// <summary>The anchor point brought down to the baseline, where the lettering is anchored on the middle of its capitals.</summary>
    public static Vec2 Baseline(this Lettering text)
    {
        if (text.Anchor is Anchor.BaselineLeft or Anchor.BaselineCentre or Anchor.BaselineRight)
        {
            return text.At;
        }

        return text.At - (text.HeightMm / 2 * text.Along().Left());
    }

    /// <summary>The left end of the baseline.</summary>
    public static Vec2 LeftEnd(this Lettering text)
    {
        double part = text.Anchor switch
        {
            Anchor.BaselineCentre or Anchor.MiddleCentre => 0.5,
            Anchor.BaselineRight or Anchor.MiddleRight => 1,
            _ => 0,
        };
        return part == 0
            ? text.Baseline()
            : text.Baseline() - (part * text.WidthMm() * text.Along());
    }

    public static double WidthMm(this Lettering text) =>
        LetterWidths.TextWidth(text.Text, text.HeightMm, text.Bold);

    /// <summary>The direction in which the lettering runs, exact at quarter turns.</summary>
    public static Vec2 Along(this Lettering text)
    {
        double turn = text.TurnDegrees % 360;
        return (turn < 0 ? turn + 360 : turn) switch
        {
            0 => new(1, 0),
            90 => new(0, 1),
            180 => new(-1, 0),
            270 => new(0, -1),
            _ => new(Math.Cos(turn * Math.PI / 180), Math.Sin(turn * Math.PI / 180)),
        };
    }
}
