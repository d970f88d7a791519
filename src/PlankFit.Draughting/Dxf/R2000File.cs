using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Dxf;

/// <summary>AC1015: every object has a handle, an owner and the names of its classes.</summary>
internal static class R2000File
{
    public static void Write(DxfOutput dxf, DxfShapes drawn, DxfOptions options)
    {
        int layers = R2000Skeleton.FirstFree;
        int entities = layers + drawn.Layers.Length + 1;
        dxf.Add(R2000Skeleton.Begin);
        DxfParts.Head(dxf, drawn, options);
        dxf.Add(9, "$HANDSEED"u8).Handle(5, entities + drawn.Shapes.Length);
        dxf.Add(R2000Skeleton.Tables);
        DxfParts.View(dxf, drawn);
        dxf.Add(R2000Skeleton.LineTypes).Add(70, drawn.AnyDashed ? 4 : 3);
        dxf.Add(R2000Skeleton.StandardLineTypes);
        if (drawn.AnyDashed)
        {
            Record(dxf, "LTYPE"u8, R2000Skeleton.DashedLineType, R2000Skeleton.LineTypeTable);
            dxf.Add(100, "AcDbLinetypeTableRecord"u8);
            DxfParts.DashedPattern(dxf, options, withKinds: true);
        }

        dxf.Add(R2000Skeleton.Layers).Add(70, drawn.Layers.Length + 1);
        foreach (string? layer in drawn.Layers.Prepend("0"))
        {
            Record(dxf, "LAYER"u8, layers++, R2000Skeleton.LayerTable);
            dxf.Add(100, "AcDbLayerTableRecord"u8);
            DxfParts.Layer(dxf, layer, layer == "0" ? 7 : DxfLayers.Colour(layer));
        }

        dxf.Add(R2000Skeleton.Entities);
        foreach (DxfShape shape in drawn.Shapes)
        {
            Write(dxf, shape, entities++);
        }

        dxf.Add(R2000Objects.End);
    }

    private static void Record(DxfOutput dxf, ReadOnlySpan<byte> kind, int handle, int owner) =>
        dxf.Add(0, kind).Handle(5, handle).Handle(330, owner).Add(100, "AcDbSymbolTableRecord"u8);

    private static void Write(DxfOutput dxf, DxfShape shape, int handle)
    {
        switch (shape)
        {
            case DxfLine line:
                Entity(dxf, "LWPOLYLINE"u8, shape, handle, "AcDbPolyline"u8);
                dxf.Add(90, line.Points.Length).Add(70, line.Closed ? 1 : 0).Add(43, 0);
                foreach (Vec2 point in line.Points)
                {
                    dxf.Add(10, point);
                }

                break;
            case DxfCircle circle:
                Entity(dxf, "CIRCLE"u8, shape, handle, "AcDbCircle"u8);
                dxf.AddFlat(10, circle.Centre).Add(40, circle.Radius);
                break;
            case DxfLettering text:
                Entity(dxf, "TEXT"u8, shape, handle, "AcDbText"u8);
                DxfParts.Text(dxf, text);
                dxf.Add(100, "AcDbText"u8);
                if (text.Middle)
                {
                    dxf.Add(73, 2);
                }

                break;
        }
    }

    private static void Entity(
        DxfOutput dxf,
        ReadOnlySpan<byte> kind,
        DxfShape shape,
        int handle,
        ReadOnlySpan<byte> subclass
    )
    {
        dxf.Add(0, kind).Handle(5, handle).Handle(330, R2000Skeleton.ModelSpace);
        dxf.Add(100, "AcDbEntity"u8);
        DxfParts.LayerOf(dxf, shape);
        dxf.Add(100, subclass);
    }
}
