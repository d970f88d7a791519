using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Dxf;

/// <summary>AC1009: no handles and no subclass markers; a polyline is a run of vertices.</summary>
internal static class R12File
{
    private static readonly byte[] Begin = DxfOutput.Template(
        """
        0 SECTION
        2 HEADER
        9 $ACADVER
        1 AC1009
        """
    );

    private static readonly byte[] Tables = DxfOutput.Template(
        """
        0 ENDSEC
        0 SECTION
        2 TABLES
        0 TABLE
        2 VPORT
        70 1
        0 VPORT
        """
    );

    private static readonly byte[] LineTypes = DxfOutput.Template(
        """
        0 ENDTAB
        0 TABLE
        2 LTYPE
        """
    );

    private static readonly byte[] StandardLineType = DxfOutput.Template(
        """
        0 LTYPE
        2 CONTINUOUS
        70 0
        3 Solid line
        72 65
        73 0
        40 0
        """
    );

    private static readonly byte[] Layers = DxfOutput.Template(
        """
        0 ENDTAB
        0 TABLE
        2 LAYER
        """
    );

    private static readonly byte[] Entities = DxfOutput.Template(
        """
        0 ENDTAB
        0 TABLE
        2 STYLE
        70 1
        0 STYLE
        2 STANDARD
        70 0
        40 0
        41 1
        50 0
        71 0
        42 1
        3 txt
        4
        0 ENDTAB
        0 ENDSEC
        0 SECTION
        2 BLOCKS
        0 ENDSEC
        0 SECTION
        2 ENTITIES
        """
    );

    private static readonly byte[] End = DxfOutput.Template(
        """
        0 ENDSEC
        0 EOF
        """
    );

    public static void Write(DxfOutput dxf, DxfShapes drawn, DxfOptions options)
    {
        dxf.Add(Begin);
        DxfParts.Head(dxf, drawn, options);
        dxf.Add(Tables);
        DxfParts.View(dxf, drawn);
        dxf.Add(LineTypes).Add(70, drawn.AnyDashed ? 2 : 1).Add(StandardLineType);
        if (drawn.AnyDashed)
        {
            dxf.Add(0, "LTYPE"u8);
            DxfParts.DashedPattern(dxf, options, withKinds: false);
        }

        dxf.Add(Layers).Add(70, drawn.Layers.Length + 1);
        foreach (string? layer in drawn.Layers.Prepend("0"))
        {
            dxf.Add(0, "LAYER"u8);
            DxfParts.Layer(dxf, layer, layer == "0" ? 7 : DxfLayers.Colour(layer));
        }

        dxf.Add(Entities);
        foreach (DxfShape shape in drawn.Shapes)
        {
            Write(dxf, shape);
        }

        dxf.Add(End);
    }

    private static void Write(DxfOutput dxf, DxfShape shape)
    {
        switch (shape)
        {
            case DxfLine line:
                dxf.Add(0, "POLYLINE"u8);
                DxfParts.LayerOf(dxf, shape);
                dxf.Add(66, 1).AddFlat(10, default).Add(70, line.Closed ? 1 : 0);
                foreach (Vec2 point in line.Points)
                {
                    dxf.Add(0, "VERTEX"u8).Add(8, shape.Layer).AddFlat(10, point);
                }

                dxf.Add(0, "SEQEND"u8).Add(8, shape.Layer);
                break;
            case DxfCircle circle:
                dxf.Add(0, "CIRCLE"u8);
                DxfParts.LayerOf(dxf, shape);
                dxf.AddFlat(10, circle.Centre).Add(40, circle.Radius);
                break;
            case DxfLettering text:
                dxf.Add(0, "TEXT"u8);
                DxfParts.LayerOf(dxf, shape);
                DxfParts.Text(dxf, text);
                if (text.Middle)
                {
                    dxf.Add(73, 2);
                }

                break;
        }
    }
}
