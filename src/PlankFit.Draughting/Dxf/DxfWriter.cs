namespace PlankFit.Draughting.Dxf;

/// <summary>
/// A drawing as a DXF file: polylines with a closed flag, circles and plain text, a layer for each of the drawing's layers. Fills are not written. The
/// same drawing gives the same bytes.
/// </summary>
public static class DxfWriter
{
    /// <summary>A remark, as the format has them, ahead of all else.</summary>
    private static readonly string Promise = FormattableString.Invariant(
        $"PlankFit: every line is within {DxfChords.WithinMm} mm of its shape"
    );

    /// <exception cref="ArgumentException">
    /// A coordinate is not a number, a line has no length or there is nothing to draw; the message names the drawing.
    /// </exception>
    public static void Write(Stream stream, Drawing drawing, DxfOptions options)
    {
        var drawn = DxfShapes.Of(drawing, options);
        using var dxf = new DxfOutput(options.Decimals);
        dxf.Add(999, Promise);
        if (options.Version == DxfVersion.R12)
        {
            R12File.Write(dxf, drawn, options);
        }
        else
        {
            R2000File.Write(dxf, drawn, options);
        }

        stream.Write(dxf.Written.Span);
    }
}
