"""How a rigid frame rests on several implants."""
