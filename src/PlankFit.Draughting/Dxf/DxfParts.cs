using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Dxf;

/// <summary>The parts that both versions have in common, apart from the handles that R2000 adds.</summary>
internal static class DxfParts
{
    private const double Aspect = 1.5;

    /// <summary>Unit, extents and version: what a reader asks first.</summary>
    public static void Head(DxfOutput dxf, DxfShapes drawn, DxfOptions options)
    {
        dxf.Add(9, "$INSBASE"u8).AddFlat(10, default);
        dxf.Add(9, "$EXTMIN"u8).AddFlat(10, drawn.Least);
        dxf.Add(9, "$EXTMAX"u8).AddFlat(10, drawn.Most);
        dxf.Add(9, "$INSUNITS"u8).Add(70, options.InsUnits);
        dxf.Add(9, "$MEASUREMENT"u8).Add(70, options.Measurement);
    }

    /// <summary>The view that the file opens with: all of the part, and a little round it.</summary>
    public static void View(DxfOutput dxf, DxfShapes drawn)
    {
        Vec2 size = drawn.Most - drawn.Least;
        dxf.Add(2, "*ACTIVE"u8).Add(70, 0);
        dxf.Add(10, new Vec2(0, 0)).Add(11, new Vec2(1, 1));
        dxf.Add(12, 0.5 * (drawn.Least + drawn.Most));
        dxf.Add(13, default(Vec2)).Add(14, new Vec2(10, 10)).Add(15, new Vec2(10, 10));
        dxf.Add(16, default(Vec2)).Add(36, 1).AddFlat(17, default);
        dxf.Add(40, 1.1 * Math.Max(Math.Max(size.Y, size.X / Aspect), 0.01)).Add(41, Aspect);
        dxf.Add(ViewRest);
    }

    /// <summary>Lines on and off in the dashes' own lengths, 2.5 and 1.5 mm.</summary>
    public static void DashedPattern(DxfOutput dxf, DxfOptions options, bool withKinds)
    {
        dxf.Add(2, "DASHED"u8).Add(70, 0).Add(3, "Dashed __ __ __"u8).Add(72, 65).Add(73, 2);
        dxf.Add(40, 4 * options.Scale).Add(49, 2.5 * options.Scale);
        if (withKinds)
        {
            dxf.Add(74, 0);
        }

        dxf.Add(49, -1.5 * options.Scale);
        if (withKinds)
        {
            dxf.Add(74, 0);
        }
    }

    public static void Layer(DxfOutput dxf, string name, int colour) =>
        dxf.Add(2, name).Add(70, 0).Add(62, colour).Add(6, "CONTINUOUS"u8);

    public static void LayerOf(DxfOutput dxf, DxfShape shape)
    {
        dxf.Add(8, shape.Layer);
        if (shape.Dashed)
        {
            dxf.Add(6, "DASHED"u8);
        }
    }

    /// <summary>A text's groups but for the vertical justification, which R2000 puts under a heading of its own.</summary>
    public static void Text(DxfOutput dxf, DxfLettering text)
    {
        dxf.AddFlat(10, text.Left).Add(40, text.Height).Add(1, text.Text);
        dxf.Add(50, text.TurnDegrees).Add(7, "STANDARD"u8);
        if (text.Across != 0 || text.Middle)
        {
            dxf.Add(72, text.Across).AddFlat(11, text.Anchor);
        }
    }

    private static readonly byte[] ViewRest = DxfOutput.Template(
        """
        42 50
        43 0
        44 0
        50 0
        51 0
        71 0
        72 100
        73 1
        74 3
        75 0
        76 0
        77 0
        78 0
        """
    );
}
