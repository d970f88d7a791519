using System.Text;
using PlankFit.Draughting.Text;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Draughting.Dxf;

/// <summary>Group codes and values going into a DXF, each on a line of its own.</summary>
internal sealed class DxfOutput(int decimals) : IDisposable
{
    private readonly Utf8Text text = new(32 * 1024);

    public ReadOnlyMemory<byte> Written => text.Written;

    /// <summary>The lines of a template, "code value" each, made into groups once and for all.</summary>
    public static byte[] Template(string lines)
    {
        var made = new StringBuilder();
        foreach (ReadOnlySpan<char> line in lines.AsSpan().EnumerateLines())
        {
            int space = line.IndexOf(' ');
            ReadOnlySpan<char> code = space < 0 ? line : line[..space];
            made.Append(code).Append("\r\n").Append(space < 0 ? "" : line[(space + 1)..]);
            made.Append("\r\n");
        }

        return Encoding.ASCII.GetBytes(made.ToString());
    }

    public DxfOutput Add(byte[] template)
    {
        text.Add(template);
        return this;
    }

    public DxfOutput Add(int code, ReadOnlySpan<byte> value)
    {
        Code(code).Add(value).Add("\r\n"u8);
        return this;
    }

    public DxfOutput Add(int code, string value)
    {
        Code(code).Add(value.AsSpan()).Add("\r\n"u8);
        return this;
    }

    public DxfOutput Add(int code, int value)
    {
        Code(code).Add(value).Add("\r\n"u8);
        return this;
    }

    public DxfOutput Add(int code, double value)
    {
        Code(code).Add(value, decimals).Add("\r\n"u8);
        return this;
    }

    public DxfOutput Handle(int code, int handle)
    {
        Span<byte> hex = stackalloc byte[8];
        handle.TryFormat(
            hex,
            out int length,
            "X",
            System.Globalization.CultureInfo.InvariantCulture
        );
        return Add(code, hex[..length]);
    }

    /// <summary>Two coordinates, under the code and the code ten above it.</summary>
    public DxfOutput Add(int code, Vec2 point) => Add(code, point.X).Add(code + 10, point.Y);

    /// <summary>Three coordinates, the third of them 0.</summary>
    public DxfOutput AddFlat(int code, Vec2 point) => Add(code, point).Add(code + 20, 0);

    public void Dispose() => text.Dispose();

    private Utf8Text Code(int code) => text.Add(code).Add("\r\n"u8);
}
